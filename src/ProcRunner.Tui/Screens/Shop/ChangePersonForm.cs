using ProcRunner.People;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Another name or role for a person, by a lead. Nobody becomes a lead this way.</summary>
internal sealed class ChangePersonForm : FormScreen
{
    private readonly ShopSession _session;
    private readonly string _id;
    private readonly Field _name;
    private readonly Field _role;
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
            Hint = () =>
                person.Role == Role.Lead
                    ? ""
                    : "A lead's PIN is longer: to make a lead, retire this id and add the person as a lead.",
            Choices = () => person.Role == Role.Lead ? ["operator", "trainee", "lead"] : ["operator", "trainee"],
            Proposed = () => RoleWord.Of(person.Role),
        };
        _lead = PinFields.Lead(session);
        _leadPin = PinFields.LeadPin(session, _lead);
        Fields = [_name, _role, _lead, _leadPin];
    }

    /// <inheritdoc/>
    protected override string Title => $"{_session.NameOf(_id)}: name and role";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; }

    /// <inheritdoc/>
    protected override string? Write()
    {
        Role role = RoleWord.Parse(_role.Text) ?? Role.Operator;
        string lead = PinFields.LeadOf(_session, _lead);
        string? fault = _session.Desk.ChangePerson(_id, _name.Text, role, lead, _leadPin.Text);
        _session.LeaveWord(fault is null ? "Changed." : "");
        return fault;
    }
}
