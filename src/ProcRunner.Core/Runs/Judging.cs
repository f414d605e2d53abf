using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>Holds values against limits, exactly: a value on a limit passes, the next smallest one beyond doesn't.</summary>
internal static class Judging
{
    /// <summary>The largest against high, the smallest against low, the spread against its own limit.</summary>
    public static Judgement Of(string name, IReadOnlyList<Exact> values, Unit unit, Limits limits, Exact? spread)
    {
        Exact largest = Statistics.Of(Statistic.Largest, values);
        Exact smallest = Statistics.Of(Statistic.Smallest, values);
        string detail =
            limits.High is { } high && largest.CompareTo(high) > 0
                ? Beyond(name, largest, high, unit, limits.Origin, "over", "high")
            : limits.Low is { } low && smallest.CompareTo(low) < 0
                ? Beyond(name, smallest, low, unit, limits.Origin, "under", "low")
            : spread is { } most && largest.Value - smallest.Value > most.Value
                ? $"{name} spreads over {Difference(largest, smallest, unit)}; at most {Show.In(most, unit)}"
            : "";
        bool judged = limits.Low is not null || limits.High is not null || spread is not null;
        return detail.Length > 0 ? limits.ShownIn(unit) with { Verdict = Verdict.Out, Detail = detail }
            : judged ? limits.MetIn(unit)
            : limits.ShownIn(unit);
    }

    private static string Beyond(
        string name,
        Exact value,
        Exact limit,
        Unit unit,
        string origin,
        string way,
        string end
    ) =>
        $"{name} {Show.In(value, unit)} is {way} the {end} limit {Show.In(limit, unit)} ({origin}) by {Difference(value, limit, unit)}";

    private static Quantity Difference(Exact a, Exact b, Unit unit)
    {
        Rational difference = (a.In(unit) - b.In(unit)).Abs();
        return difference.TryToDecimal(out decimal exact) && exact.Scale <= 8
            ? new Quantity(exact, unit)
            : new Quantity(
                difference.TryRound(Show.DigitsOf(unit) + 2, Rounding.AwayFromZero, out decimal rounded)
                    ? rounded
                    : decimal.MaxValue,
                unit
            );
    }
}
