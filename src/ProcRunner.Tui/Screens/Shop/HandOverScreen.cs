using ProcRunner.People;
using ProcRunner.Runs;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Hands a job to another person, who is the one at work from then on.</summary>
/// <param name="session">The session.</param>
/// <param name="run">The job.</param>
internal sealed class HandOverScreen(ShopSession session, JobRun run) : ListScreen(session)
{
    private readonly IReadOnlyList<Person> _people = [.. session.Desk.Present.Where(p => p.Id != run.Person)];

    /// <inheritdoc/>
    public override bool IsPractice => run.State.Job is { Practice: true };

    /// <inheritdoc/>
    protected override string Title => $"{run.State.Job?.Stamp}: hand over to";

    /// <inheritdoc/>
    protected override string Intro =>
        $"At work on it: {session.NameOf(run.Person)}. What comes next carries the name chosen here.";

    /// <inheritdoc/>
    protected override IReadOnlyList<ListColumn> Columns { get; } = [new("name", 30, 40), new("role", 0, 0)];

    /// <inheritdoc/>
    protected override int Count => _people.Count;

    /// <inheritdoc/>
    protected override string Nothing => "Nobody else is here.";

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Cells(int index, Look look) =>
        [_people[index].Name, RoleWord.Of(_people[index].Role)];

    /// <inheritdoc/>
    protected override Turn Chosen(int index)
    {
        if (ShopSession.FaultOf(run.Do(new RunCommand.HandOver(_people[index].Id))) is { } fault)
        {
            return Refuse(fault);
        }

        session.Works(_people[index].Id);
        session.LeaveWord($"Handed over to {_people[index].Name}.");
        return Turn.Back;
    }
}
