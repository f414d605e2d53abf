using ProcRunner.People;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Who works: chosen from a list, without a PIN; where a name must be proved, a PIN is asked for there.</summary>
/// <param name="session">The session.</param>
/// <param name="next">What comes next; null: the screen before.</param>
internal sealed class WhoScreen(ShopSession session, Func<Turn>? next = null) : ListScreen(session)
{
    private readonly IReadOnlyList<Person> _people = session.Desk.Present;

    /// <inheritdoc/>
    protected override string Title => "Who works?";

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Keys =>
        ["number Enter chooses", PageKeys, next is null ? "0 Enter back" : "0 Enter leaves", "* keys"];

    /// <inheritdoc/>
    protected override string Intro =>
        "Every entry carries this name. A PIN is asked for at sign-offs, not here. Another person's head is taken over by going on with it.";

    /// <inheritdoc/>
    protected override IReadOnlyList<ListColumn> Columns { get; } =
    [new("name", 30, 40), new("role", 10, 12), new("", 0, 0)];

    /// <inheritdoc/>
    protected override int Count => _people.Count;

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Cells(int index, Look look) =>
        [_people[index].Name, RoleWord.Of(_people[index].Role), _people[index].Id == session.Person ? "works now" : ""];

    /// <inheritdoc/>
    protected override Turn Chosen(int index)
    {
        session.Works(_people[index].Id);
        session.LeaveWord($"{_people[index].Name} works now.");
        return next is null ? Turn.Back : next();
    }
}
