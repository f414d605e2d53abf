using ProcRunner.Quantities;
using ProcRunner.Shop;
using ProcRunner.Tui.Screens.Parts;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Takes a gauge into use, or puts right what is known of one.</summary>
internal sealed class AddGaugeForm : FormScreen
{
    // What the gauges of a bench show; the others stand after them.
    private static readonly Unit[] Usual =
    [
        Units.Inch,
        Units.Millimetre,
        Units.PoundForce,
        Units.InchOfMercury,
        Units.Microinch,
        Units.Degree,
        Units.Newton,
        Units.Micrometre,
    ];

    private static readonly string[] InOrder =
    [
        .. Usual.Concat(Units.All.Where(u => u.Symbol.Length > 0).Except(Usual)).Select(InWords),
    ];

    private readonly ShopSession _session;
    private readonly Field _id;
    private readonly Gauge? _known;
    private readonly Field _name;
    private readonly Field _kind;
    private readonly Field _unit;
    private readonly Field _resolution;
    private readonly Field _uncertainty;
    private readonly Field _turn;
    private readonly Field _until;

    /// <summary>The form.</summary>
    /// <param name="session">The session.</param>
    /// <param name="wanted">The kind that is wanted; empty for any.</param>
    /// <param name="known">The gauge to be put right, which keeps its id; null for a new one.</param>
    public AddGaugeForm(ShopSession session, string wanted = "", Gauge? known = null)
        : base(session)
    {
        (_session, _known) = (session, known);
        _name = new("name")
        {
            Hint = () => "What people call it: depth gauge on its bridge.",
            Proposed = () => known?.Name ?? "",
        };
        _unit = new("unit", FieldKind.Choice)
        {
            Choices = () => InOrder,
            Proposed = () => known is null ? "" : InWords(known.Resolution.Unit),
        };
        string[] kinds = Kinds(session);
        _id = new("id")
        {
            Hint = () => "Short, as marked on the gauge: D1.",
            Fault = id =>
                session.Store.Shop.Gauges.Keys.Any(known =>
                    string.Equals(known, id, StringComparison.OrdinalIgnoreCase)
                )
                    ? "There is a gauge with this id already."
                    : null,
        };
        _kind = new("kind")
        {
            Hint = () => "As procedures name it. A number takes one of these; another word is typed.",
            Choices = () => kinds,
            Proposed = () => known?.Kind ?? wanted,
        };
        _resolution = Amount("shows steps of", "The smallest step it shows.", above: true, known?.Resolution);
        _uncertainty = Amount(
            "uncertainty",
            "Expanded, coverage factor 2, from its certificate.",
            above: false,
            known?.Uncertainty
        );
        _turn = new("one turn of its dial")
        {
            Hint = () => "What one turn of the dial is; empty when nothing turns over.",
            MayBeEmpty = true,
            Proposed = () => Bare(known?.Turn),
            Fault = text => text.Length == 0 || Read(text) is { Value: > 0 } ? null : NotANumber,
        };
        _until = DayField.Of(DateOnly.FromDateTime(session.Time.GetLocalNow().Date), known?.CalibratedUntil);
        Fields = [.. known is null ? new[] { _id } : [], _name, _kind, _unit, _resolution, _uncertainty, _turn, _until];
    }

    /// <inheritdoc/>
    protected override string Title => _known is null ? "A new gauge" : $"{_known.Id}: put it right";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; }

    private const string NotANumber = "A number above 0 in the unit chosen, such as 0.0005.";

    private Unit Unit => Units.All.FirstOrDefault(u => InWords(u) == _unit.Text) ?? Units.Inch;

    /// <inheritdoc/>
    protected override string? Write()
    {
        Gauge gauge = new(
            _known?.Id ?? _id.Text,
            _name.Text,
            _kind.Text,
            Read(_resolution.Text) ?? default,
            Read(_uncertainty.Text) ?? default,
            _turn.Text.Length == 0 ? null : Read(_turn.Text),
            DayField.Read(_until.Text)
        );
        string? fault = _known is null
            ? _session.Desk.AddGauge(gauge, _session.Person)
            : _session.Desk.ChangeGauge(gauge, _session.Person);
        string done = _known is null ? $"{gauge.Id} is in use." : $"{gauge.Id} is put right.";
        _session.LeaveWord(fault is null ? done : "");
        return fault;
    }

    // Only in the unit that is chosen: with another one the figure is to be typed anew.
    private string Bare(Quantity? amount) =>
        amount is { } value && value.Unit == Unit
            ? value.Value.ToString(System.Globalization.CultureInfo.InvariantCulture)
            : "";

    private Field Amount(string label, string hint, bool above, Quantity? known) =>
        new(label)
        {
            Proposed = () => Bare(known),
            Hint = () => $"{hint} Unit: {Unit.Symbol}.",
            Fault = text => Read(text) is { } value && (value.Value > 0 || !above) ? null : NotANumber,
        };

    private Quantity? Read(string text) =>
        Quantity.TryParse($"{text} {Unit.Symbol}", out Quantity value) && value.Value >= 0 ? value : null;

    private static string InWords(Unit unit) => $"{unit.Symbol}  ({unit.Name})";

    private static string[] Kinds(ShopSession session)
    {
        (IReadOnlyList<PlanFile> procedures, _) = PlanFile.Find([
            Machine.ProceduresFolder,
            Path.Combine(session.Folder, "procedures"),
        ]);
        return
        [
            .. procedures
                .SelectMany(p => p.GaugeKinds)
                .Concat(session.Store.Shop.Gauges.Values.Select(g => g.Kind))
                .Distinct()
                .Order(StringComparer.Ordinal),
        ];
    }
}
