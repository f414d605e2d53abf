using ProcRunner.Shop;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>The gauges, what each shows and until when its calibration holds.</summary>
/// <param name="session">The session.</param>
internal sealed class GaugesScreen(ShopSession session) : ListScreen(session)
{
    private IReadOnlyList<Gauge> _gauges = All(session);

    /// <inheritdoc/>
    protected override string Title => "Gauges";

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Keys =>
        ["number Enter changes", "/ adds a gauge", PageKeys, "0 Enter back"];

    /// <inheritdoc/>
    protected override IReadOnlyList<ListColumn> Columns { get; } =
    [
        new("id", 4, 8),
        new("name", 20, 34),
        new("kind", 13, 16),
        new("shows", 11, 12),
        new("uncertainty", 0, 12),
        new("calibrated until", 0, 0),
    ];

    /// <inheritdoc/>
    protected override int Count => _gauges.Count;

    /// <inheritdoc/>
    protected override string Nothing => "No gauge is known. / adds one.";

    /// <inheritdoc/>
    protected override bool HasMenu => true;

    /// <inheritdoc/>
    public override void Return()
    {
        base.Return();
        _gauges = All(session);
    }

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Cells(int index, Look look)
    {
        Gauge gauge = _gauges[index];
        string until = gauge.CalibratedUntil is { } day ? (HasRunOut(gauge) ? "PAST " : "") + Ago.Day(day) : "no date";
        return [gauge.Id, gauge.Name, gauge.Kind, gauge.Resolution.ToString(), gauge.Uncertainty.ToString(), until];
    }

    /// <inheritdoc/>
    protected override Ink InkOf(int index) => HasRunOut(_gauges[index]) ? Ink.Mind : Ink.Plain;

    /// <inheritdoc/>
    protected override Turn Chosen(int index)
    {
        Gauge gauge = _gauges[index];
        return new Turn.To(
            new MenuScreen(
                session,
                $"{gauge.Id}  {gauge.Name}",
                () => "",
                () =>
                    [
                        MenuItem.Instead("calibrated until", () => new CalibrationForm(session, gauge)),
                        MenuItem.Instead(
                            "put right what is known of it",
                            () => new AddGaugeForm(session, known: gauge)
                        ),
                    ]
            )
        );
    }

    /// <inheritdoc/>
    protected override Turn Menu() => new Turn.To(new AddGaugeForm(session));

    private bool HasRunOut(Gauge gauge) =>
        gauge.CalibratedUntil is { } day && day < DateOnly.FromDateTime(session.Time.GetLocalNow().Date);

    private static IReadOnlyList<Gauge> All(ShopSession session) =>
        [.. session.Store.Shop.Gauges.Values.OrderBy(g => g.Kind).ThenBy(g => g.Id, StringComparer.Ordinal)];
}
