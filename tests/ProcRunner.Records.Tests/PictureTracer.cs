using System.Globalization;
using System.Text.Json;
using System.Xml.Linq;

namespace ProcRunner.Records.Tests;

/// <summary>
/// Works out from the bytes of trail and shop book alone what stands in drawings, beside stages and beside gauges, and names each
/// piece that a form of the record shows otherwise. It knows nothing of the record and nothing of how it draws, but for the order in
/// which a piece is read.
/// </summary>
internal sealed class PictureTracer
{
    private const string AsFoundStage = "teardown / ";
    private readonly Dictionary<(string Of, string At), JsonElement> _last = [];
    private readonly Dictionary<(string Of, string At), JsonElement> _found = [];
    private readonly Dictionary<(string Of, string At), string> _step = [];
    private readonly HashSet<(string Step, string At)> _conceded = [];
    private readonly List<(long Number, string Time, string By, JsonElement Happened)> _events = [];
    private readonly Dictionary<string, string> _names = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, JsonElement> _gauges = new(StringComparer.Ordinal);

    public PictureTracer(string trail, string book)
    {
        foreach (JsonElement happened in Entries(book).SelectMany(e => e.GetProperty("ev").EnumerateArray()))
        {
            switch (happened.GetProperty("e").GetString())
            {
                case "person added":
                    _names[Text(happened, "id")] = Text(happened, "name");
                    break;
                case "gauge added" or "gauge changed":
                    _gauges[Text(happened, "id")] = happened;
                    break;
                default:
                    break;
            }
        }

        foreach (JsonElement entry in Entries(trail))
        {
            TimeSpan offset = TimeSpan.Parse(Text(entry, "off").TrimStart('+'), CultureInfo.InvariantCulture);
            string time = DateTimeOffset
                .Parse(Text(entry, "at"), CultureInfo.InvariantCulture)
                .ToOffset(offset)
                .ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
            foreach (JsonElement happened in entry.GetProperty("ev").EnumerateArray())
            {
                _events.Add((entry.GetProperty("n").GetInt64(), time, _names[Text(entry, "by")], happened));
                Take(happened);
            }
        }

        Pieces = [.. Plan(), .. Charts(), .. Deck(), .. Stages(), .. Gauges()];
        InWords = [.. ChartsInWords(), .. DeckInWords()];
    }

    /// <summary>What is to be read in drawings and tables, piece by piece, spaces left out.</summary>
    public IReadOnlyList<(string Name, string Piece)> Pieces { get; }

    /// <summary>What is to be read in drawings by those who don't see them.</summary>
    public IReadOnlyList<(string Name, string Piece)> InWords { get; }

    /// <summary>The pieces that a page shows otherwise.</summary>
    public string[] Wrong(XDocument page) =>
        Wrong(string.Concat(page.DescendantNodes().OfType<XText>().Select(t => t.Value)), [.. Pieces, .. InWords]);

    /// <summary>The pieces that a paper shows otherwise; it is read by people who see.</summary>
    public string[] Wrong(string paper) => Wrong(paper, Pieces);

    /// <summary>The lines for stages and gauges that a table of comma-separated values shows otherwise.</summary>
    public string[] Wrong(IReadOnlyList<List<string>> csv)
    {
        string[] lines = [.. csv.Select(f => string.Join('|', f))];
        return
        [
            .. _gauges
                .Where(g => ReadingsOf(g.Key) > 0)
                .Select(g =>
                    (
                        Name: $"gauge {g.Key}",
                        Line: $"{Text(g.Value, "name")}, {Text(g.Value, "kind")}, steps of {Shown(Text(g.Value, "resolution"))}, U {Shown(Text(g.Value, "uncertainty"))}, calibrated until {Until(g.Value)}, {N(ReadingsOf(g.Key))} readings|"
                    )
                )
                .Where(g =>
                    !lines.Any(l =>
                        l.StartsWith("gauge|", StringComparison.Ordinal)
                        && l.Contains("|" + g.Line, StringComparison.Ordinal)
                    )
                )
                .Select(g => g.Name),
        ];
    }

    private static string[] Wrong(string text, IReadOnlyList<(string Name, string Piece)> pieces)
    {
        string squeezed = Squeezed(text);
        return [.. pieces.Where(p => !squeezed.Contains(p.Piece, StringComparison.Ordinal)).Select(p => p.Name)];
    }

    private void Take(JsonElement happened)
    {
        string what = Text(happened, "e");
        if (what == "conceded")
        {
            _conceded.Add((Text(happened, "step"), Text(happened, "at")));
        }

        if (what != "reading taken")
        {
            return;
        }

        JsonElement reading = happened.GetProperty("reading");
        (string step, string at) = (Text(happened, "step"), Text(happened, "at"));
        foreach (JsonElement told in reading.GetProperty("worked").EnumerateArray().Prepend(reading))
        {
            (string, string) key = (Text(told, "of"), at);
            (_last[key], _step[key]) = (told, step);
            if (step.StartsWith(AsFoundStage, StringComparison.Ordinal))
            {
                _found[key] = told;
            }
        }
    }

    private string[] Positions =>
        [.. _last.Keys.Where(k => k.Of == "recession").Select(k => k.At).Order(StringComparer.Ordinal)];

    private string WordOf(string of, string at) =>
        Text(_last[(of, at)].GetProperty("judged"), "verdict") == "out" && _conceded.Contains((_step[(of, at)], at))
            ? "CONCEDED"
            : "";

    // The plan: each valve's name, then the short word of each value, its number, and the word of one that was conceded.
    private IEnumerable<(string, string)> Plan() =>
        Positions.Select(at =>
            (
                $"plan {at}",
                Squeezed(
                    at
                        + string.Concat(
                            new[]
                            {
                                ("depth", "recession"),
                                ("clear", "least clearance"),
                                ("runout", "seat runout"),
                                ("vacuum", "final vacuum"),
                            }.Select(v => v.Item1 + NumberOf(_last[(v.Item2, at)]) + WordOf(v.Item2, at))
                        )
                )
            )
        );

    // A row of a chart: the valve's name, low unless the chart begins at 0, high, the word of one that was conceded, the value.
    private IEnumerable<(string, string)> Charts() =>
        new[]
        {
            ("recession", true),
            ("seat runout", false),
            ("spring load closed", true),
            ("spring load open", true),
        }.SelectMany(chart =>
            Positions.Select(at =>
            {
                JsonElement told = _last[(chart.Item1, at)];
                string low = chart.Item2 ? End(told, "low") : "";
                return (
                    $"{chart.Item1} {at}",
                    Squeezed($"{at}{low}{End(told, "high")}{WordOf(chart.Item1, at)}{NumberOf(told)}")
                );
            })
        );

    private IEnumerable<(string, string)> ChartsInWords() =>
        new[] { "recession", "seat runout", "spring load closed", "spring load open" }.SelectMany(of =>
            Positions.Select(at =>
            {
                JsonElement told = _last[(of, at)];
                JsonElement judged = told.GetProperty("judged");
                string window = string.Join(
                    ',',
                    new[] { "low", "aim", "high" }
                        .Where(w => judged.GetProperty(w).ValueKind == JsonValueKind.String)
                        .Select(w => $"{w} {Text(judged, w)}")
                );
                string found =
                    _found.TryGetValue((of, at), out JsonElement was)
                    && decimal.Parse(NumberOf(was), CultureInfo.InvariantCulture)
                        != decimal.Parse(NumberOf(told), CultureInfo.InvariantCulture)
                        ? $",as found {Text(was, "value")}"
                        : "";
                string word = WordOf(of, at) is { Length: > 0 } some ? "," + some : "";
                return ($"{of} {at} in words", Squeezed($"{at} {Text(told, "value")}{word}({window}){found}"));
            })
        );

    private IEnumerable<(string, string)> Deck() =>
        new[] { ("deck thickness", true), ("flatness", false) }.SelectMany(map =>
            Panels(map.Item1)
                .Select(panel =>
                    (
                        $"{map.Item1} {panel.Name}",
                        Squeezed(
                            $"{panel.Name}, {Text(panel.Told, "value").Split(' ')[1]}front"
                                + string.Concat(
                                    Places(panel.Told).Select(p => p.Value.Split(' ')[0] + (map.Item2 ? p.Place : ""))
                                )
                        )
                    )
                )
        );

    private IEnumerable<(string, string)> DeckInWords() =>
        new[] { "deck thickness", "flatness" }.SelectMany(of =>
            Panels(of)
                .Select(panel =>
                    (
                        $"{of} {panel.Name} in words",
                        Squeezed(
                            $"{panel.Name}: {string.Join(',', Places(panel.Told).Select(p => $"{p.Place} {p.Value}"))}"
                        )
                    )
                )
        );

    private IEnumerable<(string Name, JsonElement Told)> Panels(string of) =>
        [("as found", _found[(of, "head")]), ("as built", _last[(of, "head")])];

    // A stage: its people, its first and last entry with their times, and every mark in it.
    private IEnumerable<(string, string)> Stages() =>
        _events
            .Where(e => e.Happened.TryGetProperty("step", out _))
            .GroupBy(e => Text(e.Happened, "step").Split(" / ")[0], StringComparer.Ordinal)
            .Select(stage =>
                (
                    $"stage {stage.Key}",
                    Squeezed(
                        $"{stage.Key}{string.Join(", ", stage.Select(e => e.By).Distinct())}{When(stage.First())}{When(stage.Last())}{string.Join("; ", stage.Select(Mark).Where(m => m.Length > 0))}"
                    )
                )
            );

    private static string When((long Number, string Time, string By, JsonElement Happened) at) =>
        $"{at.Time}, entry {N(at.Number)}";

    private static string Mark((long Number, string Time, string By, JsonElement Happened) at)
    {
        string meaning = Text(at.Happened, "e") switch
        {
            "signed off" => Text(at.Happened, "meaning"),
            "job released" => "released",
            "conceded" => "conceded",
            _ => "",
        };
        if (meaning.Length == 0)
        {
            return "";
        }

        bool isBeside =
            at.Happened.TryGetProperty("beside", out JsonElement beside) && beside.ValueKind == JsonValueKind.Object;
        string with = isBeside ? $" with {Text(beside, "name")} beside" : "";
        return $"{meaning} by {Text(at.Happened.GetProperty("mark"), "name")}{with}, {When(at)}";
    }

    private IEnumerable<(string, string)> Gauges() =>
        _gauges
            .Where(g => ReadingsOf(g.Key) > 0)
            .Select(g =>
                (
                    $"gauge {g.Key}",
                    Squeezed(
                        $"{g.Key}{Text(g.Value, "name")}{Text(g.Value, "kind")}{Shown(Text(g.Value, "resolution"))}{Shown(Text(g.Value, "uncertainty"))}{Until(g.Value)}{N(ReadingsOf(g.Key))}"
                    )
                )
            );

    private static string Until(JsonElement gauge) => gauge.GetProperty("until").GetString() ?? "no date kept";

    private int ReadingsOf(string gauge) =>
        _events.Count(e =>
            Text(e.Happened, "e") == "reading taken" && Text(e.Happened.GetProperty("reading"), "gauge") == gauge
        );

    private static IEnumerable<(string Place, string Value)> Places(JsonElement told) =>
        told.GetProperty("places").EnumerateArray().Select(p => (Text(p, "place"), Text(p, "value")));

    private static string NumberOf(JsonElement told) => Text(told, "value").Split(' ')[0];

    private static string End(JsonElement told, string end) =>
        told.GetProperty("judged").GetProperty(end).GetString()?.Split(' ')[0] ?? "";

    // The files say uin, people read the sign.
    private static string Shown(string quantity) => quantity.Replace("uin", "\u00b5in", StringComparison.Ordinal);

    private static string Text(JsonElement map, string key) => map.GetProperty(key).GetString() ?? "";

    private static string N(long number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Squeezed(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));

    private static IEnumerable<JsonElement> Entries(string trail)
    {
        foreach (string line in trail.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            using JsonDocument entry = JsonDocument.Parse(line[..line.IndexOf('\t', StringComparison.Ordinal)]);
            yield return entry.RootElement.Clone();
        }
    }
}
