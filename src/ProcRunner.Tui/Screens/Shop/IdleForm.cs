using System.Globalization;
using ProcRunner.Tui.Screens.Parts;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>After how many minutes without a key the screen asks who works; a lead stands by it.</summary>
internal sealed class IdleForm : FormScreen
{
    private readonly ShopSession _session;
    private readonly Field _minutes;
    private readonly Field _lead;
    private readonly Field _leadPin;

    /// <summary>The form.</summary>
    public IdleForm(ShopSession session)
        : base(session)
    {
        _session = session;
        _minutes = new("minutes")
        {
            Hint = () => "Without a key for so long, the screen asks who works. 0: never.",
            Proposed = () => session.Store.Shop.IdleMinutes.ToString(CultureInfo.InvariantCulture),
            Fault = text => Minutes(text) is null ? "Whole minutes up to a day, or 0 for never." : null,
        };
        _lead = PinFields.Lead(session);
        _leadPin = PinFields.LeadPin(session, _lead);
        Fields = [_minutes, _lead, _leadPin];
    }

    /// <inheritdoc/>
    protected override string Title => "Sign-out when idle";

    /// <inheritdoc/>
    protected override string Intro =>
        "On a shared screen the next one to come is easily taken for the last one. What was typed waits meanwhile; only a half-typed PIN is forgotten.";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; }

    /// <summary>The setting in words.</summary>
    public static string InWords(long minutes) =>
        minutes == 0 ? "never" : string.Create(CultureInfo.InvariantCulture, $"after {minutes} min without a key");

    /// <inheritdoc/>
    protected override string? Write()
    {
        string lead = PinFields.LeadOf(_session, _lead);
        long minutes = Minutes(_minutes.Text) ?? 0;
        string? fault = _session.Desk.SetIdle(minutes, lead, _leadPin.Text);
        _session.LeaveWord(fault is null ? $"Sign-out: {InWords(minutes)}." : "");
        return fault;
    }

    private static long? Minutes(string text) =>
        long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out long minutes)
        && minutes <= ShopDesk.MostIdleMinutes
            ? minutes
            : null;
}
