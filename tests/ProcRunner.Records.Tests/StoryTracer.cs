using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace ProcRunner.Records.Tests;

/// <summary>
/// Traces what a page tells of the course of the work: each line that names an entry of the trail, and each cell of what stood
/// before. The decimals in it must stand in that entry's own bytes, or in those just before it that belong to it.
/// </summary>
internal sealed partial class StoryTracer
{
    private readonly Dictionary<long, HashSet<string>> _entries = [];

    public StoryTracer(string trail)
    {
        long number = 0;
        foreach (string line in trail.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            _entries[++number] = [.. Decimals(line[..line.IndexOf('\t', StringComparison.Ordinal)])];
        }
    }

    /// <summary>The texts that tell of an entry, with the entries whose numbers may stand in them.</summary>
    public static IReadOnlyList<(XText Text, string Told, long From, long To)> Told(XDocument page) =>
        [.. Cases(page), .. Earlier(page), .. TheSame(page), .. Cuts(page)];

    /// <summary>Those whose numbers aren't all in their entries.</summary>
    public IReadOnlyList<string> Wrong(XDocument page) =>
        [
            .. Told(page)
                .Where(t => Decimals(t.Told).Any(n => !Stands(n, t.From, t.To)))
                .Select(t => t.Text.Value)
                .Distinct(),
        ];

    /// <summary>The decimals of a text: what is measured, not what is counted.</summary>
    public static IEnumerable<string> Decimals(string text) => Decimal().Matches(text).Select(m => m.Value);

    /// <summary>True for a number that stands in one of these entries.</summary>
    public bool Stands(string number, long from, long to)
    {
        for (long entry = from; entry <= to; entry++)
        {
            if (_entries.TryGetValue(entry, out HashSet<string>? all) && all.Contains(number))
            {
                return true;
            }
        }

        return false;
    }

    // A cut's result tells of its pass, which is the entry before.
    private static IEnumerable<(XText, string, long, long)> Cases(XDocument page) =>
        from line in page.Descendants("li")
        let text = line.Nodes().OfType<XText>().FirstOrDefault()
        where text is not null && text.Value.Contains(" (entered by ", StringComparison.Ordinal)
        let entry = EntryOf(text.Value)
        select (text, text.Value.Split(" (entered by ")[0], Math.Max(1, entry - 1), entry);

    private static IEnumerable<(XText, string, long, long)> Earlier(XDocument page) =>
        from table in page.Descendants("table")
        where table.Element("caption")!.Value.StartsWith("What stood before", StringComparison.Ordinal)
        from row in table.Element("tbody")!.Elements("tr")
        from cell in row.Elements("td")
        let text = cell.Nodes().OfType<XText>().Single()
        let entry = EntryOf(text.Value)
        select (text, text.Value, entry, entry);

    // Both entries say the same, so either would do for each number: both must.
    private static IEnumerable<(XText, string, long, long)> TheSame(XDocument page) =>
        from table in page.Descendants("table")
        where table.Element("caption")!.Value.StartsWith("Taken again", StringComparison.Ordinal)
        from row in table.Element("tbody")!.Elements("tr")
        let text = row.Elements("td").First().Nodes().OfType<XText>().Single()
        from entry in EntriesOf(row.Elements().Last().Value)
        select (text, text.Value, entry, entry);

    // From the zero on: its passes and readings follow it.
    private static IEnumerable<(XText, string, long, long)> Cuts(XDocument page) =>
        from table in page.Descendants("table")
        where table.Element("caption")!.Value.StartsWith("Every cut from its zero", StringComparison.Ordinal)
        from row in table.Element("tbody")!.Elements("tr")
        let entry = EntryOf(row.Elements().Last().Value)
        from cell in row.Elements("td").Skip(1).Take(3)
        let text = cell.Nodes().OfType<XText>().Single()
        select (text, text.Value, entry, entry + 5);

    private static IEnumerable<long> EntriesOf(string text) =>
        Numbers()
            .Matches(text[text.IndexOf("entr", StringComparison.Ordinal)..])
            .Select(m => long.Parse(m.Value, CultureInfo.InvariantCulture));

    private static long EntryOf(string text) =>
        long.Parse(Entry().Match(text).Groups["number"].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("entry (?<number>[0-9]+)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Entry();

    [GeneratedRegex("[0-9]+", RegexOptions.NonBacktracking)]
    private static partial Regex Numbers();

    [GeneratedRegex("[0-9]+[.][0-9]+", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Decimal();
}
