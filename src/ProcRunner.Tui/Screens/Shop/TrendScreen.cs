using ProcRunner.Records.History;
using ProcRunner.Shop;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>A reading's history: run chart with limits, capability, last out of spec; all together or told apart.</summary>
/// <param name="session">The session.</param>
/// <param name="name">The characteristic.</param>
internal sealed class TrendScreen(ShopSession session, string name) : TextScreen(session)
{
    private static readonly (TrendBy By, string Whose)[] Ways =
    [
        (TrendBy.All, ""),
        (TrendBy.Person, "person"),
        (TrendBy.Gauge, "gauge"),
        (TrendBy.Cutter, "cutter"),
        (TrendBy.Head, "head"),
    ];

    private readonly Dictionary<(int Way, bool AsFound, int Width), IReadOnlyList<TextLine>> _made = [];
    private readonly Dictionary<bool, IReadOnlyList<TrendReading>> _readings = [];
    private int _way;
    private bool _asFound;

    /// <inheritdoc/>
    protected override string Title => _asFound ? $"{name}, as found" : name;

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Keys =>
        [
            .. Ways.Select((way, i) => (Key: $"{(char)('1' + i)} {(i == 0 ? "all" : $"by {way.Whose}")}", i))
                .Where(way => way.i != _way)
                .Select(way => way.Key),
            _asFound ? "6 as built" : "6 as found",
            PageKeys.Length > 0 ? "+ -" : "",
            "0 back",
        ];

    /// <inheritdoc/>
    protected override IReadOnlyList<TextLine> Lines(int width)
    {
        if (!_made.TryGetValue((_way, _asFound, width), out IReadOnlyList<TextLine>? lines))
        {
            lines = Make(width);
            _made[(_way, _asFound, width)] = lines;
        }

        return lines;
    }

    /// <inheritdoc/>
    protected override Turn Other(string text)
    {
        if (text.Length != 1 || text[0] is < '1' or > '6')
        {
            return Refuse("1 to 6 tell the readings apart.");
        }

        (_way, _asFound) = text == "6" ? (_way, !_asFound) : (text[0] - '1', _asFound);
        Page(int.MinValue / 2);
        return Turn.Stay;
    }

    private IReadOnlyList<TextLine> Make(int width)
    {
        if (session.Store.Index is not { } index)
        {
            return [new("This store keeps no search index.", Ink.Mind)];
        }

        if (!_readings.TryGetValue(_asFound, out IReadOnlyList<TrendReading>? readings))
        {
            readings = [.. ReadingHistory.Of(index, name, _asFound)];
            _readings[_asFound] = readings;
        }

        (TrendBy by, string whose) = Ways[_way];
        Trend trend = Trend.Of(readings, by);
        return trend.Groups.Count == 0
            ? [new("Nothing yet; practice isn't counted.", Ink.Quiet)]
            : [.. new TrendWords(trend).Lines(width, whose, id => NameOf(by, id)).Select(Shown)];
    }

    private string NameOf(TrendBy by, string id) =>
        by == TrendBy.Person ? session.NameOf(id)
        : by == TrendBy.Gauge && session.Store.Shop.Gauges.TryGetValue(id, out Gauge? gauge) ? $"{id}, {gauge.Name}"
        : id;

    private static TextLine Shown(string line) =>
        new(
            Fitting.Words(line),
            line.StartsWith("==", StringComparison.Ordinal) ? Ink.Strong
                : line == RunChart.Legend ? Ink.Quiet
                : Ink.Plain
        );
}
