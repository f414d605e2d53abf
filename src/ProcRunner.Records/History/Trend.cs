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
        TrendReading[] alike = [.. all.Where(r => r.Value.Dimension == unit.Dimension)];
        int digits = alike.Where(r => r.Value.Unit == unit).Max(r => r.Value.Value.Scale);
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
            .Select(g => Capable(g.Key, [.. g.Select(r => FromAim(r.Value, r, unit)!.Value)]));

    private static KindCapability Capable(Window window, Rational[] off)
    {
        double? low = window.Low?.ToDouble();
        double? high = window.High?.ToDouble();
        if (!Univariate.Of(off).TryGet(out Univariate? found, out _))
        {
            return new(window.Kind, off.Length, off[0].ToDouble(), 0, low, high, window.IsFromAim, null);
        }

        Capability? capability =
            off.Length >= Least
            && ShopMath.Capability.Of(found.Mean, found.Deviation, low, high).TryGet(out Capability? known, out _)
                ? known
                : null;
        return new(window.Kind, off.Length, found.Mean, found.Deviation, low, high, window.IsFromAim, capability);
    }

    private static Rational? FromAim(Quantity? quantity, TrendReading reading, Unit unit) =>
        quantity is { } some && some.Dimension == unit.Dimension
            ? Exact.Of(some).In(unit) - (reading.Aim is { } aim ? Exact.Of(aim).In(unit) : Rational.Zero)
            : null;

    private static double In(Quantity quantity, Unit unit) => Exact.Of(quantity).In(unit).ToDouble();

    private static double Aim(TrendReading reading, Unit unit) => reading.Aim is { } aim ? In(aim, unit) : 0;

    private readonly record struct Window(string Kind, bool IsFromAim, Rational? Low, Rational? High);
}
