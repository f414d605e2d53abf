using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>A new PIN in place of a forgotten one, by a lead: the person types the new one, the lead theirs.</summary>
internal sealed class ResetPinForm : FormScreen
{
    private readonly ShopSession _session;
    private readonly string _id;
    private readonly Field _new;
    private readonly Field _lead;
    private readonly Field _leadPin;

    /// <summary>The form.</summary>
    public ResetPinForm(ShopSession session, string id)
        : base(session)
    {
        (_session, _id) = (session, id);
        _new = PinFields.New(() => session.Store.Shop.People[id].Role, "new PIN");
        _lead = PinFields.Lead(session, except: id);
        _leadPin = PinFields.LeadPin(session, _lead, except: id);
        Fields = [_new, PinFields.Again(_new), _lead, _leadPin];
    }

    /// <inheritdoc/>
    protected override string Title => $"{_session.NameOf(_id)}: a new PIN";

    /// <inheritdoc/>
    protected override string Intro =>
        $"For a PIN that is forgotten. {_session.NameOf(_id)} gets a new key that the lead vouches for. What was signed before stays good; a wait after wrong PINs ends.";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; }

    /// <inheritdoc/>
    protected override string? Write()
    {
        string lead = PinFields.LeadOf(_session, _lead, except: _id);
        string? fault = _session.Desk.ResetPin(_id, _new.Text, lead, _leadPin.Text);
        _session.LeaveWord(fault is null ? $"{_session.NameOf(_id)} has a new PIN." : "");
        return fault;
    }
}
