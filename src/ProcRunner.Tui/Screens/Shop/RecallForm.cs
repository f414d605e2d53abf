using System.Collections.Immutable;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Recalls: every head that holds a part and lot, or every reading taken with a gauge since it was known good.</summary>
internal sealed class RecallForm : FormScreen
{
    private const string Part = "a part and its lot";
    private const string OfGauge = "a gauge that turned out bad";
    private readonly ShopSession _session;
    private readonly Field _what = new("recall", FieldKind.Choice) { Choices = () => [Part, OfGauge] };
    private readonly Field _number;
    private readonly Field _lot;
    private readonly Field _gauge;
    private Screen? _found;

    /// <summary>The form.</summary>
    public RecallForm(ShopSession session)
        : base(session)
    {
        _session = session;
        _number = new("part number")
        {
            Hint = () => "In full, as it was entered or scanned.",
            IsAsked = () => _what.Value != OfGauge,
        };
        _lot = new("lot")
        {
            Hint = () => "In full. Empty: every lot.",
            MayBeEmpty = true,
            IsAsked = () => _what.Value != OfGauge,
        };
        _gauge = new("gauge", FieldKind.Choice)
        {
            Hint = () => "Every reading since the shop book last has it known good.",
            Choices = () => [.. session.Store.Shop.Gauges.Keys],
            IsAsked = () => _what.Value == OfGauge,
        };
        Fields = [_what, _number, _lot, _gauge];
    }

    /// <inheritdoc/>
    protected override string Title => "Recall";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; }

    /// <inheritdoc/>
    protected override string? Write()
    {
        if (_session.Store.Index is not { } index)
        {
            return "This store keeps no search index.";
        }

        _found = _what.Value == OfGauge ? Readings(index, _gauge.Text) : Heads(index, _number.Text, _lot.Text);
        return index.Trouble is { } trouble ? $"The search index can't be used: {trouble}"
            : _found is null ? "Nothing was found."
            : null;
    }

    /// <inheritdoc/>
    protected override Turn Done() => new Turn.Instead(_found!);

    private PickJobScreen? Heads(SearchIndex index, string number, string lot)
    {
        string? ofLot = lot.Length == 0 ? null : lot;
        ImmutableArray<IndexedJob> jobs = index.Holding(number, ofLot);
        return jobs.IsEmpty
            ? null
            : new PickJobScreen(
                _session,
                $"Holds {number}{(ofLot is null ? "" : $", lot {ofLot}")}",
                () => [.. jobs.Select(job => JobLedger.Entry(job, $"at {RecallLines.Where(job, number, ofLot)}"))]
            );
    }

    private PageScreen? Readings(SearchIndex index, string gauge)
    {
        DateTimeOffset since = GaugeGoodness.LastKnownGood(_session.Store.Reader, gauge) ?? DateTimeOffset.MinValue;
        ImmutableArray<(IndexedJob, IndexedReading)> readings = index.ReadingsWith(gauge, since);
        return readings.IsEmpty
            ? null
            : new PageScreen(
                _session,
                $"Readings with {gauge}",
                [
                    .. RecallLines
                        .OfGauge(gauge, since, asBooked: true, readings)
                        .Select(line => new TextLine(
                            Fitting.Words(line),
                            line.StartsWith("==", StringComparison.Ordinal) ? Ink.Strong : Ink.Plain
                        )),
                ]
            );
    }
}
