using ProcRunner.Tui.Screens.Parts;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Where the shop is found and called, as it stands on its records; a lead stands by it.</summary>
internal sealed class ContactForm : FormScreen
{
    private readonly ShopSession _session;
    private readonly Field _contact;
    private readonly Field _lead;
    private readonly Field _leadPin;

    /// <summary>The form.</summary>
    public ContactForm(ShopSession session)
        : base(session)
    {
        _session = session;
        _contact = new("address, phone")
        {
            Hint = () => "In one line, as it is to stand under the shop's name on the records.",
            Proposed = () => session.Store.Shop.Contact,
            Fault = text => text.Length > ShopDesk.MostContact ? "Shorter: two lines on paper." : null,
        };
        _lead = PinFields.Lead(session);
        _leadPin = PinFields.LeadPin(session, _lead);
        Fields = [_contact, _lead, _leadPin];
    }

    /// <inheritdoc/>
    protected override string Title => "Address and telephone";

    /// <inheritdoc/>
    protected override string Intro =>
        "Who comes back with a head years later reads here where to ask. It stands on the records of jobs that are still open, and of later ones.";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; }

    /// <summary>The setting in words.</summary>
    public static string InWords(string contact) => contact.Length == 0 ? "no address or telephone" : contact;

    /// <inheritdoc/>
    protected override string? Write()
    {
        string lead = PinFields.LeadOf(_session, _lead);
        string? fault = _session.Desk.SetContact(_contact.Text, lead, _leadPin.Text);
        _session.LeaveWord(fault is null ? $"On records: {InWords(_session.Store.Shop.Contact)}." : "");
        return fault;
    }
}
