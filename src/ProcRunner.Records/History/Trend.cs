using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Records.History;

/// <summary>
/// The history of one reading: a run chart with control limits of single readings, and how well the limits are kept. Where
/// readings have aims that differ, their deviations from the aim are charted.
/// </summary>
public sealed class Trend
{
    /// <summary>Fewer readings say nothing of a process (common practice, no source; charts commonly ask for 20 and more).</summary>
    public const int Least = 10;

    /// <summary>Fewer readings give limits that are only a first guess (common practice, no source).</summary>
    public const int Steady = 20;

    private const int MostExact = 2000;
    private const decimal MostPlain = 1e12m;

    private Trend(Unit unit, int digits, bool fromAim, int leftOut, IReadOnlyList<TrendGroup> groups)
    {
        (Unit, Digits, IsFromAim, LeftOut, Groups) = (unit, digits, fromAim, leftOut, groups);
    }

    /// <summary>The unit of every figure: the one most readings were taken in.</summary>
    public Unit Unit { get; }

    /// <summary>The places after the point that the readings were taken to, the most of them.</summary>
    public int Digits { get; }

    /// <summary>True when deviations from the aim are charted.</summary>
    public bool IsFromAim { get; }

    /// <summary>Readings that measure something else than the others and were left out.</summary>
    public int LeftOut { get; }

    /// <summary>The whole, or each part of it.</summary>
    public IReadOnlyList<TrendGroup> Groups { get; }

    /// <summary>The history of some readings.</summary>
    /// <param name="readings">In whatever order.</param>
    /// <param name="by">What they are told apart by.</param>
    public static Trend Of(IEnumerable<TrendReading> readings, TrendBy by = TrendBy.All)
    {
        TrendReading[] all = [.. readings.OrderBy(r => r.At)];
        if (all.Length == 0)
        {
            return new(Units.One, 0, false, 0, []);
        }

        Unit unit = all.GroupBy(r => r.Value.Unit).MaxBy(g => g.Count())!.Key;
        TrendReading[] alike = [.. all.Where(r => r.Value.Dimension == unit.Dimension).Select(Sound)];
        // A reading without an aim has no place on a chart of readings that have one.
        TrendReading[] aimed = [.. alike.Where(r => r.Aim is not null)];
        alike = aimed.Length > 0 ? aimed : alike;
        int digits = alike
            .Where(r => r.Value.Unit == unit)
            .Select(r => (int)r.Value.Value.Scale)
            .DefaultIfEmpty(0)
            .Max();
        bool fromAim = alike.Select(r => r.Aim is { } aim ? In(aim, unit) : (double?)null).Distinct().Count() > 1;
        return new(
            unit,
            digits,
            fromAim,
            all.Length - alike.Length,
            [
                .. alike
                    .GroupBy(r => NameOf(r, by))
                    .OrderBy(g => g.Key, StringComparer.Ordinal)
                    .Select(g => Group(g.Key, [.. g], unit, fromAim)),
            ]
        );
    }

    /// <summary>The limits of a reading on the chart, in the trend's unit; null where it has none.</summary>
    public (double? Low, double? Aim, double? High) WindowOf(TrendReading reading)
    {
        double zero = IsFromAim ? Aim(reading, Unit) : 0;
        return (
            reading.Low is { } low ? In(low, Unit) - zero : null,
            reading.Aim is { } aim ? In(aim, Unit) - zero : null,
            reading.High is { } high ? In(high, Unit) - zero : null
        );
    }

    // A limit that measures something else than its reading is none.
    private static TrendReading Sound(TrendReading reading)
    {
        bool Fits(Quantity? limit) => limit is not { } some || some.Dimension == reading.Value.Dimension;
        return Fits(reading.Low) && Fits(reading.Aim) && Fits(reading.High)
            ? reading
            : reading with
            {
                Low = null,
                Aim = null,
                High = null,
            };
    }

    private static string NameOf(TrendReading reading, TrendBy by) =>
        by switch
        {
            TrendBy.Person => reading.Person,
            TrendBy.Gauge => reading.Gauge,
            TrendBy.Cutter => reading.Cutter,
            TrendBy.Head => reading.Head,
            _ => "",
        };

    private static TrendGroup Group(string name, TrendReading[] readings, Unit unit, bool fromAim)
    {
        double[] values = [.. readings.Select(r => In(r.Value, unit) - (fromAim ? Aim(r, unit) : 0))];
        ControlLimits? limits =
            readings.Length >= Least && ControlLimits.OfIndividuals(values).TryGet(out ControlLimits? found, out _)
                ? found
                : null;
        return new(name, readings, values, values.Average(), limits, [.. Capabilities(readings, unit)]);
    }

    // Deviations from the aim can be taken together where the limits lie alike about it.
    private static IEnumerable<KindCapability> Capabilities(TrendReading[] readings, Unit unit) =>
        readings
            .GroupBy(r => new Window(r.Kind, r.Aim is not null, FromAim(r.Low, r, unit), FromAim(r.High, r, unit)))
            .OrderBy(g => g.Key.Kind, StringComparer.Ordinal)
            .ThenByDescending(g => g.Count())
            .Select(g => Capable(g.Key, [.. g], unit));

    private static KindCapability Capable(Window window, TrendReading[] readings, Unit unit)
    {
        (double mean, double deviation) = Spread(readings, unit);
        Capability? capability =
            readings.Length >= Least
            && Capability.Of(mean, deviation, window.Low, window.High).TryGet(out Capability? known, out _)
                ? known
                : null;
        return new(
            window.Kind,
            readings.Length,
            mean,
            deviation,
            window.Low,
            window.High,
            window.IsFromAim,
            capability
        );
    }

    // Exact ratios lose no digit, and take too long for a hundred thousand readings: there the mean is taken first and the
    // deviations from it after, in doubles.
    private static (double Mean, double Deviation) Spread(TrendReading[] readings, Unit unit)
    {
        if (
            readings.Length <= MostExact
            && Univariate
                .Of([.. readings.Select(r => ExactFromAim(r.Value, r, unit))])
                .TryGet(out Univariate? found, out _)
        )
        {
            return (found.Mean, found.Deviation);
        }

        double[] off = [.. readings.Select(r => FromAim(r.Value, r, unit)!.Value)];
        double mean = off.Average();
        return (mean, off.Length < 2 ? 0 : Math.Sqrt(off.Sum(one => (one - mean) * (one - mean)) / (off.Length - 1)));
    }

    private static double? FromAim(Quantity? quantity, TrendReading reading, Unit unit)
    {
        if (quantity is not { } some || some.Dimension != unit.Dimension)
        {
            return null;
        }

        decimal zero = reading.Aim?.Value ?? 0;
        bool plain =
            some.Unit == unit
            && (reading.Aim is null || reading.Aim.Value.Unit == unit)
            && Math.Abs(some.Value) < MostPlain
            && Math.Abs(zero) < MostPlain;
        return plain ? (double)(some.Value - zero) : ExactFromAim(some, reading, unit).ToDouble();
    }

    private static Rational ExactFromAim(Quantity quantity, TrendReading reading, Unit unit) =>
        Exact.Of(quantity).In(unit) - (reading.Aim is { } aim ? Exact.Of(aim).In(unit) : Rational.Zero);

    private static double In(Quantity quantity, Unit unit) =>
        quantity.Unit == unit ? (double)quantity.Value : Exact.Of(quantity).In(unit).ToDouble();

    private static double Aim(TrendReading reading, Unit unit) => reading.Aim is { } aim ? In(aim, unit) : 0;

    private readonly record struct Window(string Kind, bool IsFromAim, double? Low, double? High);
}
