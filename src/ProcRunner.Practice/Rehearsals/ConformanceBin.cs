namespace ProcRunner.Practice.Rehearsals;

/// <summary>Values at a release of about the same chance of being in limits, by their reading and its gauge's uncertainty.</summary>
/// <param name="From">The least chance in it (JCGM 106:2012, 7.4).</param>
/// <param name="To">The chance at which the next begins.</param>
/// <param name="Values">How many values.</param>
/// <param name="Expected">How many of them would be out of limits if nothing were known but their readings.</param>
/// <param name="Out">How many are, in truth.</param>
public readonly record struct ConformanceBin(double From, double To, long Values, double Expected, long Out)
{
    private static readonly double[] Edges = [0, 0.5, 0.7, 0.9, 0.99, 0.999, 1];

    /// <summary>All of them, empty.</summary>
    public static ConformanceBin[] None() =>
        [.. Edges.Zip(Edges.Skip(1), (from, to) => new ConformanceBin(from, to, 0, 0, 0))];

    /// <summary>The index of a chance's bin.</summary>
    public static int IndexOf(double chance)
    {
        int index = Edges.Length - 2;
        while (index > 0 && chance < Edges[index])
        {
            index--;
        }

        return index;
    }

    /// <summary>With one value more.</summary>
    public ConformanceBin With(double chance, bool isOut) =>
        this with
        {
            Values = Values + 1,
            Expected = Expected + 1 - chance,
            Out = Out + (isOut ? 1 : 0),
        };

    /// <summary>With those of another sample.</summary>
    public ConformanceBin With(ConformanceBin other) =>
        this with
        {
            Values = Values + other.Values,
            Expected = Expected + other.Expected,
            Out = Out + other.Out,
        };
}
