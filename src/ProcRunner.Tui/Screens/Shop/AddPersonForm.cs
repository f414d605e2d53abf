using ProcRunner.People;
using ProcRunner.Tui.Screens.Parts;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Adds a person: they choose their PIN, a lead vouches with theirs.</summary>
internal sealed class AddPersonForm : FormScreen
{
    private static readonly Role[] Roles = [Role.Operator, Role.Trainee, Role.Lead];
    private readonly ShopSession _session;
    private readonly Field _name;
    private readonly Field _id;
    private readonly Field _role;
    private readonly Field _pin;
    private readonly Field _lead;
    private readonly Field _leadPin;

    /// <summary>The form.</summary>
    public AddPersonForm(ShopSession session)
        : base(session)
    {
        _session = session;
        _name = new("name") { Hint = () => "As it is to be printed beside signatures." };
        _id = new("short id")
        {
            Hint = () => "Short, and never given to anybody else.",
            Proposed = () => ShopDesk.ProposeId(_name!.Text, session.Store.Shop),
            Fault = id =>
                session.Store.Shop.People.Keys.Any(known =>
                    string.Equals(known, id, StringComparison.OrdinalIgnoreCase)
                )
                    ? "There is somebody with this id already."
                    : null,
        };
        _role = new("role", FieldKind.Choice)
        {
            Choices = () =>
                ["operator: works and signs", "trainee: a lead signs beside", "lead: also concedes, scraps, vouches"],
            Proposed = () => "operator: works and signs",
        };
        _pin = PinFields.New(() => RoleChosen);
        _lead = PinFields.Lead(session);
        _leadPin = PinFields.LeadPin(session, _lead);
        Fields = [_name, _id, _role, _pin, PinFields.Again(_pin), _lead, _leadPin];
    }

    /// <inheritdoc/>
    protected override string Title => "A new person";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; }

    private Role RoleChosen => Roles[Math.Max(0, _role.Index)];

    /// <inheritdoc/>
    protected override string? Write()
    {
        string lead = PinFields.LeadOf(_session, _lead);
        string? fault = _session.Desk.AddPerson(_id.Text, _name.Text, RoleChosen, _pin.Text, lead, _leadPin.Text);
        _session.LeaveWord(fault is null ? $"{_name.Text} may sign from now on." : "");
        return fault;
    }
}
