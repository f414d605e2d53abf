using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>The first start: nothing is here yet.</summary>
/// <param name="door">What opens and makes stores.</param>
internal sealed class WelcomeScreen(ShopDoor door) : ListScreen(new DoorWords())
{
    /// <inheritdoc/>
    protected override string Title => "ProcRunner";

    /// <inheritdoc/>
    protected override string Intro =>
        "Walks whoever rebuilds a cylinder head through the whole job, from teardown to hand-over: asks for every reading, works out the next number to cut to, doesn't go on while something is out of spec, and keeps who did what.";

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Keys => ["number Enter chooses", "* keys", "4 Enter leaves"];

    /// <inheritdoc/>
    protected override IReadOnlyList<ListColumn> Columns { get; } = [new("", 0, 0)];

    /// <inheritdoc/>
    protected override int Count => 4;

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Cells(int index, Look look) =>
        index switch
        {
            0 => ["try it on the demo shop: an invented head, people and gauges"],
            1 => ["found this shop's own store: its name, its first lead, a PIN"],
            2 => ["practice: lessons with gauges to read, on an invented head"],
            _ => ["leave"],
        };

    /// <inheritdoc/>
    protected override Turn Chosen(int index)
    {
        switch (index)
        {
            case 0:
                (IReadOnlyList<Screen> screens, string fault) = door.OpenDemo();
                return screens.Count == 0 ? Refuse(fault) : new Turn.Instead(screens[0], screens.ElementAtOrDefault(1));
            case 1:
                return new Turn.To(new FoundShopForm(door));
            case 2:
                (Screen? practice, string why) = door.Practice();
                return practice is null ? Refuse(why) : new Turn.To(practice);
            default:
                return new Turn.Leave();
        }
    }

    /// <inheritdoc/>
    protected override Turn Slash() => Turn.Stay;

    /// <inheritdoc/>
    protected override Turn Zero() => new Turn.Leave();
}
