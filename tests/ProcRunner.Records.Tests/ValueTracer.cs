using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace ProcRunner.Records.Tests;

/// <summary>
/// Reads the values out of a trail's own bytes, and names each that a form of the record shows otherwise. It knows nothing of the
/// record: the latest reading of a name at a place counts.
/// </summary>
internal sealed partial class ValueTracer
{
    private readonly Dictionary<(string Name, string At), Fact> _facts = [];
    private readonly Dictionary<(string Name, string At), HashSet<string>> _ever = [];

    public ValueTracer(string trail)
    {
        foreach (string line in trail.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            using JsonDocument entry = JsonDocument.Parse(line[..line.IndexOf('\t', StringComparison.Ordinal)]);
            long number = entry.RootElement.GetProperty("n").GetInt64();
            foreach (JsonElement happened in entry.RootElement.GetProperty("ev").EnumerateArray())
            {
                if (happened.GetProperty("e").GetString() == "reading taken")
                {
                    string at = happened.GetProperty("at").GetString()!;
                    string step = happened.GetProperty("step").GetString()!;
                    JsonElement reading = happened.GetProperty("reading");
                    Take(reading, at, step, number);
                    foreach (JsonElement worked in reading.GetProperty("worked").EnumerateArray())
                    {
                        Take(worked, at, step, number);
                    }
                }
            }
        }
    }

    /// <summary>The values there are, in the order of their entries.</summary>
    public IReadOnlyList<(string Name, string At)> Names => [.. _facts.OrderBy(f => f.Value.Entry).Select(f => f.Key)];

    /// <summary>Each value, as <c>name at place</c>, that isn't as it stands in the trail, and each that isn't there.</summary>
    public string[] Wrong(XDocument page) => Wrong(RowsOf(page), Shown);

    /// <summary>The same of the table of comma-separated values, line by line and field by field.</summary>
    public string[] Wrong(IEnumerable<IReadOnlyList<string>> csv) =>
        Wrong(
            csv.Where(f => f[0] == "value")
                .Select(f => new Row(
                    f[1],
                    f[2],
                    f[10],
                    f[12].IndexOf(": ", StringComparison.Ordinal) is > 0 and int at ? $"{f[3]} ({f[12][at..]}" : f[3],
                    $"{f[5]} {f[6]} {f[7]}",
                    $"entry {f[15]}"
                )),
            quantity => quantity
        );

    /// <summary>The same of a paper's text, with all spaces left out: each value must stand there with all that belongs to it.</summary>
    public string[] Wrong(string paper) =>
        [.. _facts.Keys.Where(key => RowOn(paper, key).Length == 0).Select(key => $"{key.Name} at {key.At}")];

    /// <summary>Where on a paper a value stands, from as found to its limits; no length when it doesn't.</summary>
    public (int From, int Length) RowOn(string paper, (string Name, string At) value)
    {
        Fact fact = _facts[value];
        string limits = string.Join(',', fact.Window.Select(w => $"{w.Word}{Squeezed(Shown(w.Quantity))}"));
        string middle = Squeezed($"{Shown(fact.Value)}{fact.Places}") + limits;
        string end = $"{Squeezed(fact.Step)};";
        string entry = $",entry{fact.Entry.ToString(CultureInfo.InvariantCulture)}";
        string[] found = ["", .. _ever[value].Select(e => Squeezed(Shown(e)))];
        foreach (string begin in found.Select(f => Squeezed(value.Name) + f + middle))
        {
            for (int at = Next(paper, begin, 0); at >= 0; at = Next(paper, begin, at + 1))
            {
                int after = at + begin.Length;
                int step = Next(paper, end, after);
                int by = step < 0 ? -1 : Next(paper, entry, step);
                if (
                    step >= 0
                    && step < after + 200
                    && by >= 0
                    && by < step + end.Length + 80
                    && !IsDigit(paper, by + entry.Length)
                )
                {
                    return (at + Squeezed(value.Name).Length, begin.Length - Squeezed(value.Name).Length);
                }
            }
        }

        return (0, 0);
    }

    private static int Next(string text, string part, int from) => text.IndexOf(part, from, StringComparison.Ordinal);

    private static bool IsDigit(string text, int at) => at < text.Length && char.IsAsciiDigit(text[at]);

    /// <summary>The cells of a page in which a value's numbers stand: as found, final, limits.</summary>
    public static IReadOnlyList<XElement> Cells(XDocument page, (string Name, string At) value) =>
        [
            .. Tables(page)
                .Where(t => t.At == value.At)
                .SelectMany(t => t.Rows)
                .Single(r =>
                    r.Value.StartsWith(value.Name, StringComparison.Ordinal) && r.Elements().First().Value == value.Name
                )
                .Elements()
                .Skip(1)
                .Take(3),
        ];

    private static IEnumerable<(string At, IEnumerable<XElement> Rows)> Tables(XDocument page) =>
        page.Descendants("table")
            .Select(t => (Caption: t.Element("caption")!.Value, Rows: t.Element("tbody")!.Elements("tr")))
            .Where(t => t.Caption.StartsWith("Values ", StringComparison.Ordinal))
            .Select(t =>
                (t.Caption.StartsWith("Values at ", StringComparison.Ordinal) ? t.Caption[10..] : "head", t.Rows)
            );

    private static IEnumerable<Row> RowsOf(XDocument page) =>
        Tables(page)
            .SelectMany(t => t.Rows.Select(r => (t.At, Cells: r.Elements().Select(c => c.Value).ToArray())))
            .Select(r => new Row(
                r.Cells[0],
                r.At,
                r.Cells[2].Length > 0 ? r.Cells[1] : "",
                r.Cells[2].Length > 0 ? r.Cells[2] : r.Cells[1],
                r.Cells[3].Split(" (")[0],
                r.Cells[5]
            ));

    private string[] Wrong(IEnumerable<Row> rows, Func<string, string> show)
    {
        Dictionary<(string, string), Row> shown = rows.ToDictionary(r => (r.Name, r.At));
        return
        [
            .. _facts
                .Where(f => !shown.TryGetValue(f.Key, out Row? row) || !IsRight(row, f.Value, _ever[f.Key], show))
                .Select(f => $"{f.Key.Name} at {f.Key.At}"),
            .. shown.Keys.Where(key => !_facts.ContainsKey(key)).Select(key => $"{key.Item1} at {key.Item2}"),
        ];
    }

    private static bool IsRight(Row row, Fact fact, HashSet<string> ever, Func<string, string> show) =>
        Numbers(row.Final).SequenceEqual(Numbers(show(fact.Value) + fact.Places))
        && Numbers(row.Limits).SequenceEqual(fact.Window.SelectMany(w => Numbers(show(w.Quantity))))
        && (row.Found.Length == 0 || ever.Any(e => Numbers(show(e)).SequenceEqual(Numbers(row.Found))))
        && row.Taken.EndsWith($"entry {fact.Entry.ToString(CultureInfo.InvariantCulture)}", StringComparison.Ordinal);

    private void Take(JsonElement told, string at, string step, long entry)
    {
        (string, string) key = (told.GetProperty("of").GetString()!, at);
        string value = told.GetProperty("value").GetString()!;
        JsonElement judged = told.GetProperty("judged");
        (string, string)[] window =
        [
            .. new[] { "low", "aim", "high" }
                .Select(w => (w, judged.GetProperty(w).GetString() ?? ""))
                .Where(w => w.Item2.Length > 0)
                .Select(w => w),
        ];
        string[] places = told.TryGetProperty("places", out JsonElement all)
            ?
            [
                .. all.EnumerateArray()
                    .Select(p =>
                        $"{p.GetProperty("place").GetString()} {p.GetProperty("value").GetString()!.Split(' ')[0]}"
                    ),
            ]
            : [];
        string inBrackets = places.Length > 1 ? $" ({string.Join(", ", places)})" : "";
        _facts[key] = new Fact(value, inBrackets, window, step, entry);
        (_ever.TryGetValue(key, out HashSet<string>? ever) ? ever : _ever[key] = []).Add(value);
    }

    // The trail keeps minutes of angle; people read degrees and minutes.
    private static string Shown(string quantity)
    {
        if (!quantity.EndsWith(" arcmin", StringComparison.Ordinal))
        {
            return quantity;
        }

        decimal minutes = decimal.Parse(quantity.Split(' ')[0], CultureInfo.InvariantCulture);
        return string.Create(CultureInfo.InvariantCulture, $"{decimal.Floor(minutes / 60)}\u00B0{minutes % 60}'");
    }

    private static string Squeezed(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));

    private static IEnumerable<string> Numbers(string text) => Number().Matches(text).Select(m => m.Value);

    [GeneratedRegex("-?[0-9]+([.][0-9]+)?", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Number();

    private sealed record Fact(
        string Value,
        string Places,
        (string Word, string Quantity)[] Window,
        string Step,
        long Entry
    );

    private sealed record Row(string Name, string At, string Found, string Final, string Limits, string Taken);
}
