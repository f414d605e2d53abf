using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Puts a person's key behind another PIN; the old one is needed.</summary>
internal sealed class ChangePinForm : FormScreen
{
    private readonly ShopSession _session;
    private readonly string _id;
    private readonly Field _old;
    private readonly Field _new;

    /// <summary>The form.</summary>
    public ChangePinForm(ShopSession session, string id)
        : base(session)
    {
        (_session, _id) = (session, id);
        _old = new("PIN until now", FieldKind.Pin)
        {
            Hint = () => "A forgotten PIN can't be brought back: a lead gives a new one. What was signed stays good.",
        };
        _new = PinFields.New(() => session.Store.Shop.People[id].Role, "new PIN");
        Fields = [_old, _new, PinFields.Again(_new)];
    }

    /// <inheritdoc/>
    protected override string Title => $"{_session.NameOf(_id)}: another PIN";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; }

    /// <inheritdoc/>
    protected override string? Write()
    {
        string? fault = _session.Desk.ChangePin(_id, _old.Text, _new.Text);
        _session.LeaveWord(fault is null ? "The PIN is changed." : "");
        return fault;
    }
}
