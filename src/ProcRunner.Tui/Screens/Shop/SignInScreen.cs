using System.Globalization;
using ProcRunner.People;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>
/// Who is at the machine now: over whatever screen it was asked from, which stays as it is. Enter alone is whoever was there
/// before.
/// </summary>
/// <param name="session">The session.</param>
/// <param name="idle">True after a time without a key: it can't be left without an answer.</param>
internal sealed class SignInScreen(ShopSession session, bool idle) : ListScreen(session)
{
    private readonly IReadOnlyList<Person> _people =
    [
        .. session.Desk.Present.OrderBy(p => p.Id == session.AtMachine ? 0 : 1),
    ];

    /// <inheritdoc/>
    protected override string Title => idle ? "Nobody is signed in" : "Who is at the machine?";

    /// <inheritdoc/>
    protected override string Asks => Last is { } last ? $"Number; Enter: {last.Name}" : "Number";

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Keys =>
        ["number Enter chooses", PageKeys, idle ? "" : "0 Enter back", "* keys"];

    /// <inheritdoc/>
    protected override string Intro =>
        idle
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"No key for {session.Store.Shop.IdleMinutes} min. Nothing is lost: what was typed waits where it stood, and whoever is chosen goes on from there. Only a half-typed PIN is forgotten."
            )
            : "What comes next carries this name. What was typed waits where it stood; only a half-typed PIN is forgotten.";

    /// <inheritdoc/>
    protected override IReadOnlyList<ListColumn> Columns { get; } =
    [new("name", 30, 40), new("role", 10, 12), new("", 0, 0)];

    /// <inheritdoc/>
    protected override int Count => _people.Count;

    private Person? Last => _people is [{ } first, ..] && first.Id == session.AtMachine ? first : null;

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Cells(int index, Look look) =>
        [
            _people[index].Name,
            RoleWord.Of(_people[index].Role),
            _people[index].Id != session.AtMachine ? ""
            : idle ? "was here last"
            : "works now",
        ];

    /// <inheritdoc/>
    protected override Turn Bare() => Last is null ? Turn.Stay : Chosen(0);

    /// <inheritdoc/>
    protected override Turn Zero() => idle ? Refuse("First choose who works.") : Turn.Back;

    /// <inheritdoc/>
    protected override Turn Slash() => Turn.Stay;

    /// <inheritdoc/>
    protected override Turn Escaped() => Zero();

    /// <inheritdoc/>
    protected override Turn Chosen(int index)
    {
        if (session.ChangeTo(_people[index].Id) is { } fault)
        {
            return Refuse(fault);
        }

        session.LeaveWord($"{_people[index].Name} works now.");
        return Turn.Back;
    }
}
