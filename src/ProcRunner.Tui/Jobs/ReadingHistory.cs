using ProcRunner.Quantities;
using ProcRunner.Records.History;
using ProcRunner.Runs;
using ProcRunner.Store.Local;

namespace ProcRunner.Tui.Jobs;

/// <summary>A reading's history out of the search index. Practice is left out, and so are readings with a cut still under way.</summary>
internal static class ReadingHistory
{
    /// <summary>The names of all readings there are.</summary>
    public static IReadOnlyList<string> Names(SearchIndex index) => index.ReadingNames();

    /// <summary>The name that is meant: itself, or the only one that holds it; null for none or several.</summary>
    public static string? Meant(IReadOnlyList<string> names, string text)
    {
        string[] holding = [.. names.Where(n => n.Contains(text, StringComparison.OrdinalIgnoreCase))];
        return names.FirstOrDefault(n => string.Equals(n, text, StringComparison.OrdinalIgnoreCase))
            ?? (holding is [var only] ? only : null);
    }

    /// <summary>The readings of one name.</summary>
    /// <param name="index">The index.</param>
    /// <param name="name">The characteristic.</param>
    /// <param name="asFound">True: as the heads came in; false: what was made of them.</param>
    public static IEnumerable<TrendReading> Of(SearchIndex index, string name, bool asFound)
    {
        string isShort = VerdictWord.Of(Verdict.Short);
        string isOut = VerdictWord.Of(Verdict.Out);
        foreach ((IndexedJob job, IndexedReading reading) in index.ReadingsOf(name))
        {
            bool wanted = !job.Practice && reading.AsFound == asFound && reading.Verdict != isShort;
            if (wanted && Quantity.TryParse(reading.Value, out Quantity value))
            {
                yield return new(
                    reading.At,
                    value,
                    Limit(reading.Low),
                    Limit(reading.Aim),
                    Limit(reading.High),
                    reading.Verdict == isOut
                )
                {
                    Stamp = job.Stamp,
                    Position = reading.Position,
                    Kind = reading.Kind,
                    Person = reading.Person,
                    Gauge = reading.Gauge,
                    Cutter = reading.Cutter,
                    Head = job.Head,
                };
            }
        }
    }

    private static Quantity? Limit(string text) => Quantity.TryParse(text, out Quantity limit) ? limit : null;
}
