using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>Statistics of a handful of values, exact.</summary>
public static class Statistics
{
    /// <summary>One of the statistics of values of one dimension: of at least one, unless they are counted.</summary>
    /// <exception cref="InvalidOperationException">There are no values to take it of.</exception>
    public static Exact Of(Statistic statistic, IReadOnlyList<Exact> values) =>
        statistic switch
        {
            Statistic.Largest => Largest(values),
            Statistic.Smallest => Smallest(values),
            Statistic.Spread => new Exact(Largest(values).Value - Smallest(values).Value, values[0].Dimension),
            Statistic.Median => Median(values),
            Statistic.Count => new Exact(Rational.FromInteger(values.Count), Dimension.None),
            _ => Mean(values),
        };

    /// <summary>Half way between two amounts of one dimension.</summary>
    public static Exact Middle(Exact one, Exact other) =>
        new((one.Value + other.Value) / Rational.FromInteger(2), one.Dimension);

    private static Exact Largest(IReadOnlyList<Exact> values)
    {
        Exact largest = First(values);
        for (int i = 1; i < values.Count; i++)
        {
            largest = values[i].CompareTo(largest) > 0 ? values[i] : largest;
        }

        return largest;
    }

    private static Exact Smallest(IReadOnlyList<Exact> values)
    {
        Exact smallest = First(values);
        for (int i = 1; i < values.Count; i++)
        {
            smallest = values[i].CompareTo(smallest) < 0 ? values[i] : smallest;
        }

        return smallest;
    }

    private static Exact Mean(IReadOnlyList<Exact> values)
    {
        Rational sum = First(values).Value;
        for (int i = 1; i < values.Count; i++)
        {
            sum += values[i].Value;
        }

        return new Exact(sum / Rational.FromInteger(values.Count), values[0].Dimension);
    }

    private static Exact Median(IReadOnlyList<Exact> values)
    {
        List<Exact> sorted = [First(values), .. values.Skip(1)];
        sorted.Sort();
        int middle = sorted.Count / 2;
        return sorted.Count % 2 == 1 ? sorted[middle] : Middle(sorted[middle - 1], sorted[middle]);
    }

    private static Exact First(IReadOnlyList<Exact> values) =>
        values.Count > 0 ? values[0] : throw new InvalidOperationException("There are no values.");
}
