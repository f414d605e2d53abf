using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>A person has left; a lead says so.</summary>
internal sealed class RetireForm : FormScreen
{
    private readonly ShopSession _session;
    private readonly string _id;
    private readonly Field _lead;
    private readonly Field _leadPin;

    /// <summary>The form.</summary>
    public RetireForm(ShopSession session, string id)
        : base(session)
    {
        (_session, _id) = (session, id);
        _lead = PinFields.Lead(session);
        _leadPin = PinFields.LeadPin(session, _lead);
        Fields = [_lead, _leadPin];
    }

    /// <inheritdoc/>
    protected override string Title => $"{_session.NameOf(_id)} has left";

    /// <inheritdoc/>
    protected override string Intro =>
        $"From now on {_session.NameOf(_id)} can't sign. What was signed before stays good. This can't be taken back; a person who returns is added anew.";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; }

    /// <inheritdoc/>
    protected override string? Write()
    {
        string? fault = _session.Desk.Retire(_id, PinFields.LeadOf(_session, _lead), _leadPin.Text);
        _session.LeaveWord(fault is null ? $"{_session.NameOf(_id)} can't sign any more." : "");
        return fault;
    }
}
