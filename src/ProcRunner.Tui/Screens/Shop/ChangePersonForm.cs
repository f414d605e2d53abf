using ProcRunner.People;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Another name or role for a person, by a lead. Who becomes a lead gets a new PIN.</summary>
internal sealed class ChangePersonForm : FormScreen
{
    private readonly ShopSession _session;
    private readonly string _id;
    private readonly Field _name;
    private readonly Field _role;
    private readonly Field _pin;
    private readonly Field _lead;
    private readonly Field _leadPin;

    /// <summary>The form.</summary>
    public ChangePersonForm(ShopSession session, string id)
        : base(session)
    {
        (_session, _id) = (session, id);
        Person person = session.Store.Shop.People[id];
        _name = new("name") { Proposed = () => person.Name };
        _role = new("role", FieldKind.Choice)
        {
            Choices = () => ["operator", "trainee", "lead"],
            Proposed = () => RoleWord.Of(person.Role),
        };
        _lead = PinFields.Lead(session);
        _leadPin = PinFields.LeadPin(session, _lead);
        _pin = PinFields.New(() => Role.Lead, "new PIN", () => BecomesLead);
        Fields = [_name, _role, _pin, PinFields.Again(_pin, () => BecomesLead), _lead, _leadPin];
    }

    // A lead's PIN is longer, so a new one comes with the role.
    private bool BecomesLead =>
        RoleWord.Parse(_role.Text) == Role.Lead && _session.Store.Shop.People[_id].Role != Role.Lead;

    /// <inheritdoc/>
    protected override string Title => $"{_session.NameOf(_id)}: name and role";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; }

    /// <inheritdoc/>
    protected override string? Write()
    {
        Role role = RoleWord.Parse(_role.Text) ?? Role.Operator;
        string lead = PinFields.LeadOf(_session, _lead);
        string? fault = _session.Desk.ChangePerson(_id, _name.Text, role, lead, _leadPin.Text, _pin.Text);
        _session.LeaveWord(fault is null ? "Changed." : "");
        return fault;
    }
}
