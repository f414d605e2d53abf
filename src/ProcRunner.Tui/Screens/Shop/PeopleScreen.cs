using ProcRunner.People;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Everyone who may sign, or once might.</summary>
/// <param name="session">The session.</param>
internal sealed class PeopleScreen(ShopSession session) : ListScreen(session)
{
    private IReadOnlyList<Person> _people = All(session);

    /// <inheritdoc/>
    protected override string Title => "People";

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Keys =>
        ["number Enter changes", "/ adds a person", PageKeys, "0 Enter back"];

    /// <inheritdoc/>
    protected override IReadOnlyList<ListColumn> Columns { get; } =
    [new("name", 24, 40), new("role", 9, 12), new("id", 10, 20), new("", 0, 0)];

    /// <inheritdoc/>
    protected override int Count => _people.Count;

    /// <inheritdoc/>
    protected override bool HasMenu => true;

    /// <inheritdoc/>
    public override void Return()
    {
        base.Return();
        _people = All(session);
    }

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Cells(int index, Look look)
    {
        Person person = _people[index];
        string last =
            person.RetiredAt is { } left ? $"left {Ago.Clock(left.ToOffset(look.Now.Offset))}"
            : person.IsRoot ? "first lead"
            : "";
        return [person.Name, RoleWord.Of(person.Role), person.Id, last];
    }

    /// <inheritdoc/>
    protected override Ink InkOf(int index) => _people[index].RetiredAt is null ? Ink.Plain : Ink.Quiet;

    /// <inheritdoc/>
    protected override Turn Chosen(int index) => new Turn.To(PersonMenu.Of(session, _people[index].Id));

    /// <inheritdoc/>
    protected override Turn Menu() => new Turn.To(new AddPersonForm(session));

    private static IReadOnlyList<Person> All(ShopSession session) =>
        [
            .. session
                .Store.Shop.People.Values.OrderBy(p => p.RetiredAt is not null)
                .ThenBy(p => p.Name, StringComparer.OrdinalIgnoreCase),
        ];
}
