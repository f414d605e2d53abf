using ProcRunner.People;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Founds the shop's own store: its name, the first lead, the lead's PIN twice.</summary>
internal sealed class FoundShopForm : FormScreen
{
    private readonly ShopDoor _door;
    private readonly Field _shop = new("shop's name") { Hint = () => "As it is to stand on the records." };
    private readonly Field _lead = new("first lead")
    {
        Hint = () =>
            "Name of the first person who signs, concedes and vouches for others. All keys of the shop hang on this one.",
    };
    private readonly Field _pin = PinFields.New(() => Role.Lead);
    private IReadOnlyList<Screen> _screens = [];

    /// <summary>The form.</summary>
    public FoundShopForm(ShopDoor door)
        : base(new DoorWords())
    {
        _door = door;
        Fields = [_shop, _lead, _pin, PinFields.Again(_pin)];
    }

    /// <inheritdoc/>
    protected override string Title => "The shop's own store";

    /// <inheritdoc/>
    protected override string Intro =>
        $"It will be in {_door.ShopFolder}. procrunner backup copies it, also while somebody works.";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; }

    /// <inheritdoc/>
    protected override string? Write()
    {
        (_screens, string fault) = _door.FoundShop(_shop.Text, _lead.Text, _pin.Text);
        return _screens.Count == 0 ? fault : null;
    }

    /// <inheritdoc/>
    protected override Turn Done() => new Turn.Instead(_screens[0], _screens.ElementAtOrDefault(1));
}
