using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs;

namespace ProcRunner.Records.History;

/// <summary>A head that came back: how it was built beside how it was found, and what may have been too near its limit.</summary>
public sealed class Comeback(RunState built, RunState found)
{
    /// <summary>A value as it was built and as it was found.</summary>
    /// <param name="Name">The characteristic.</param>
    /// <param name="Position">Where.</param>
    /// <param name="Built">As it went out.</param>
    /// <param name="Found">As it came back; null while it isn't measured.</param>
    /// <param name="Change">Found less built, in the unit it was built in; null while unknown.</param>
    /// <param name="Used">Of what was left to the limit that it went towards, the part that is used up: 1 on the limit, more
    /// past it. Null where it went towards no limit, was on it or past it already, or isn't measured.</param>
    /// <param name="Limits">What it was held to when it was built.</param>
    public sealed record Row(
        string Name,
        string Position,
        Quantity Built,
        Quantity? Found,
        Quantity? Change,
        double? Used,
        Judgement Limits
    )
    {
        /// <summary>True when what was found is outside the limits that it was built to.</summary>
        public bool IsPast =>
            Found is { } now
            && (
                (Limits.Low is { } low && Alike(now, low) && now.CompareTo(low) < 0)
                || (Limits.High is { } high && Alike(now, high) && now.CompareTo(high) > 0)
            );
    }

    /// <summary>A value's nearness to a limit when the head went out.</summary>
    /// <param name="Row">The value.</param>
    /// <param name="Limit">The limit.</param>
    /// <param name="Left">What was left to it.</param>
    /// <param name="Share">What was left as a part of the whole window, or of the limit where there is only one; 0 on the limit.</param>
    /// <param name="IsOfWindow">True for a part of a window with two ends.</param>
    public sealed record Nearness(Row Row, Quantity Limit, Quantity Left, double Share, bool IsOfWindow);

    /// <summary>Every value that the head went out with.</summary>
    public IReadOnlyList<Row> Rows { get; } =
    [.. RunValues.Of(built).Where(v => !v.Value.Stale).OrderBy(v => v.Position).Select(v => Pair(v, built, found))];

    /// <summary>The values that were nearest to a limit when the head went out, the nearest first.</summary>
    public IEnumerable<Nearness> Nearest =>
        Rows.Select(NearnessOf)
            .OfType<Nearness>()
            .OrderBy(n => n.Share)
            .ThenBy(n => n.Row.Name, StringComparer.Ordinal);

    /// <summary>The values that used up the most of what was left to their limit, the most first.</summary>
    public IEnumerable<Row> MostUsed =>
        Rows.Where(r => r.Used > 0).OrderByDescending(r => r.Used).ThenBy(r => r.Name, StringComparer.Ordinal);

    /// <summary>What was fitted, by position; the last of each kind counts.</summary>
    public IEnumerable<RunEvent.PartFitted> Replaced =>
        built.Parts.GroupBy(p => (p.Part, p.At.Position)).Select(g => g.Last()).OrderBy(p => p.At.Position);

    /// <summary>What the procedure could have fitted and wasn't: the old one stayed in.</summary>
    public IEnumerable<(string Part, string Position)> Kept
    {
        get
        {
            HashSet<(string, int)> fitted = [.. built.Parts.Select(p => (p.Part, p.At.Position))];
            return built
                .Plan.Steps.Where(s => s.Work is StepWork.Fit)
                .SelectMany(s => built.Plan.PositionsOf(s).Select(p => (s.Subject, Position: p)))
                .Distinct()
                .Where(p => !fitted.Contains((p.Subject, p.Position)))
                .Select(p => (p.Subject, built.Plan.PositionName(p.Position)));
        }
    }

    private static Row Pair(
        (Characteristic Characteristic, int Position, ValueRecord Value) then,
        RunState built,
        RunState found
    )
    {
        string position = built.Plan.PositionName(then.Position);
        int at =
            then.Position == At.Head ? At.Head
            : found.Plan.TryPosition(position, out int known) ? known
            : -2;
        ValueRecord? now = at == -2 ? null : found.Value(then.Characteristic.Name, at);
        Quantity was = then.Value.Value;
        Quantity? came = now?.AsFound is { } asFound && Alike(asFound, was) ? asFound : null;
        return new(
            then.Characteristic.Name,
            position,
            was,
            came,
            came is { } c ? Less(c, was) : null,
            came is { } f ? UsedOf(was, f, then.Value.Judgement) : null,
            then.Value.Judgement
        );
    }

    private static double? UsedOf(Quantity built, Quantity found, Judgement limits)
    {
        Rational change = Size(found) - Size(built);
        Quantity? towards = change > Rational.Zero ? limits.High : limits.Low;
        if (change == Rational.Zero || towards is not { } limit || !Alike(limit, built))
        {
            return null;
        }

        Rational room = Size(limit) - Size(built);
        bool wasWithin = change > Rational.Zero ? room > Rational.Zero : room < Rational.Zero;
        return wasWithin ? (change / room).ToDouble() : null;
    }

    private static Nearness? NearnessOf(Row row)
    {
        Quantity? low = row.Limits.Low is { } l && Alike(l, row.Built) ? l : null;
        Quantity? high = row.Limits.High is { } h && Alike(h, row.Built) ? h : null;
        Nearness? below = low is { } floor ? To(row, floor, Size(row.Built) - Size(floor), low, high) : null;
        Nearness? above = high is { } top ? To(row, top, Size(top) - Size(row.Built), low, high) : null;
        return below is null || above?.Share < below.Share ? above : below;
    }

    private static Nearness? To(Row row, Quantity limit, Rational left, Quantity? low, Quantity? high)
    {
        Rational whole =
            low is { } a && high is { } b ? Size(b) - Size(a)
            : Size(limit) < Rational.Zero ? -Size(limit)
            : Size(limit);
        bool fits = new Exact(left, row.Built.Dimension).TryToQuantity(
            row.Built.Unit,
            Digits(row.Built, limit),
            Rounding.TowardZero,
            out Quantity shown
        );
        return whole > Rational.Zero && fits
            ? new(row, limit, shown, (left / whole).ToDouble(), low is not null && high is not null)
            : null;
    }

    private static Quantity? Less(Quantity a, Quantity b) =>
        new Exact(Size(a) - Size(b), b.Dimension).TryToQuantity(
            b.Unit,
            Digits(a, b),
            Rounding.AwayFromZero,
            out Quantity less
        )
            ? less
            : null;

    // A difference of two places on a temperature scale is no place on it.
    private static bool Alike(Quantity a, Quantity b) =>
        a.Dimension == b.Dimension && a.Dimension != Dimension.OfTemperature;

    private static Rational Size(Quantity quantity) => Exact.Of(quantity).Value;

    private static int Digits(Quantity a, Quantity b) => Math.Max((int)a.Value.Scale, (int)b.Value.Scale);
}
