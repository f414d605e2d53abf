using System.Globalization;
using ProcRunner.Quantities;
using ProcRunner.Shop;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>How the machine's depth readout is set and read. Every target is shown in its terms.</summary>
internal sealed class ReadoutForm : FormScreen
{
    private const string Deeper = "deeper";
    private const string Travel = "the travel";
    private const string OneZero = "one fixed zero";
    private const string Zeroed = "set to zero at touch-off";
    private readonly ShopSession _session;
    private readonly Field _unit;
    private readonly Field _step;
    private readonly Field _grows;
    private readonly Field _shows;
    private readonly Field _counts;
    private readonly Field _zero;

    /// <summary>The form.</summary>
    public ReadoutForm(ShopSession session)
        : base(session)
    {
        _session = session;
        Readout? now = session.Store.Shop.Readout;
        _unit = Pick("unit", "What it shows.", [Units.Inch.Symbol, Units.Millimetre.Symbol], now?.Unit.Symbol);
        _step = new("smallest step")
        {
            Hint = () => "The last digit of the display moves by this much. A number takes one of these, or type it.",
            Choices = () =>
                _unit!.Text == Units.Millimetre.Symbol ? ["0.005", "0.010", "0.001"] : ["0.0005", "0.0002", "0.0001"],
            Proposed = () => now is not null && now.Unit.Symbol == _unit!.Text ? Text(now.Step) : "",
            Fault = text => Step(text) is null ? "A number above 0, such as 0.0005." : null,
        };
        _grows = Pick(
            "grows",
            "The number grows as the tool goes ...",
            [Deeper, "up"],
            now is null ? null
                : now.GrowsDeeper ? Deeper
                : "up"
        );
        _shows = Pick(
            "shows",
            "It shows ... (diameter mode shows twice the travel)",
            [Travel, "twice the travel"],
            now is null ? null
                : now.ShowsDiameter ? "twice the travel"
                : Travel
        );
        _counts = Pick(
            "counts from",
            "It counts from ...",
            [OneZero, "its last reset"],
            now is null ? null
                : now.StepMode ? "its last reset"
                : OneZero
        );
        _zero = Pick(
            "at touch-off",
            "When the cutter just comes in all round, it is ...",
            [Zeroed, "preset to the measured value"],
            now is null ? null
                : now.Preset ? "preset to the measured value"
                : Zeroed
        );
        Fields = [_unit, _step, _grows, _shows, _counts, _zero];
    }

    /// <inheritdoc/>
    protected override string Title => "The machine's readout";

    /// <inheritdoc/>
    protected override string Intro =>
        "Every target is worked out in the terms of this display. Move the spindle by a known amount and watch it before answering.";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; }

    /// <inheritdoc/>
    protected override string? Write()
    {
        Readout readout = new(
            _unit.Text == Units.Millimetre.Symbol ? Units.Millimetre : Units.Inch,
            Step(_step.Text) ?? 0,
            _grows.Text == Deeper,
            _shows.Text != Travel,
            _counts.Text != OneZero,
            _zero.Text != Zeroed
        );
        string? fault = _session.Desk.SetReadout(readout, _session.Person);
        _session.LeaveWord(fault is null ? "The readout is set up. It is confirmed again at every zero." : "");
        return fault;
    }

    private static Field Pick(string label, string hint, IReadOnlyList<string> choices, string? now) =>
        new(label, FieldKind.Choice)
        {
            Hint = () => hint,
            Choices = () => choices,
            Proposed = () => now ?? "",
        };

    private static decimal? Step(string text) =>
        decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal step)
        && step > 0
            ? step
            : null;

    private static string Text(decimal step) => step.ToString(CultureInfo.InvariantCulture);
}
