using ProcRunner.People;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>The first lead of a store that has nobody yet.</summary>
internal sealed class FirstLeadForm : FormScreen
{
    private readonly ShopSession _session;
    private readonly Field _name = new("first lead") { Hint = () => "All keys of the shop hang on this person's." };
    private readonly Field _pin = PinFields.New(() => Role.Lead);

    /// <summary>The form.</summary>
    public FirstLeadForm(ShopSession session)
        : base(session)
    {
        _session = session;
        Fields = [_name, _pin, PinFields.Again(_pin)];
    }

    /// <inheritdoc/>
    protected override string Title => "Nobody works here yet";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; }

    /// <inheritdoc/>
    protected override string? Write() => _session.Desk.AddFirstLead(_name.Text, _pin.Text);

    /// <inheritdoc/>
    protected override Turn Done()
    {
        _session.Works(_session.Store.Shop.RootId ?? "");
        return new Turn.Instead(new JobListScreen(_session));
    }
}
