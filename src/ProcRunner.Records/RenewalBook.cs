using ProcRunner.Records.Story;
using ProcRunner.Runs;

namespace ProcRunner.Records;

/// <summary>What stopped holding because something moved, and whether it was taken again.</summary>
internal sealed class RenewalBook(RunState state, Outlook outlook, Telling tell)
{
    /// <summary>The renewals, those of one cause together, in the order of their first entries.</summary>
    public IReadOnlyList<Renewal> All(IReadOnlyList<RecordEntry> entries) =>
        [
            .. entries
                .SelectMany(entry => entry.Events.OfType<RunEvent.WentStale>().Select(e => (Entry: entry, Stale: e)))
                .GroupBy(e => e.Stale.Cause, StringComparer.Ordinal)
                .Select(g =>
                    Tell(
                        g.Key,
                        [.. g.SelectMany(e => e.Stale.Items).Distinct()],
                        [.. g.Select(e => e.Entry).Distinct().Select(tell.Stamp)]
                    )
                ),
        ];

    private Renewal Tell(string cause, StaleItem[] items, IReadOnlyList<Stamped> by)
    {
        StaleItem[] values = [.. items.Where(i => i.Characteristic >= 0)];
        bool Stays(StaleItem i) =>
            i.Characteristic >= 0
            && state.Value(i.Characteristic, i.Position) is { Stale: true }
            && outlook.WhoTakesAgain(i.Characteristic, i.Position) is null;
        bool Waits(StaleItem i) =>
            i.Characteristic >= 0
                ? state.Value(i.Characteristic, i.Position) is { Stale: true } && !Stays(i)
                : outlook.ViewOf(new At(i.Step, i.Position)) is StepView.Open or StepView.Waiting;
        // Taken since the last entry that made it void.
        bool WasTaken(StaleItem i) =>
            i.Characteristic >= 0
                ? state.Value(i.Characteristic, i.Position) is { Stale: false }
                : state.Find(new At(i.Step, i.Position)) is { Standing: StepStanding.Done or StepStanding.Out };
        return new Renewal(
            cause,
            Names(items),
            Names([.. values.Where(Stays)]),
            Names([.. items.Where(Waits)]),
            Names([.. items.Where(i => !Stays(i) && !Waits(i) && !WasTaken(i))]),
            by
        );
    }

    private string[] Names(StaleItem[] items) =>
        [
            .. items
                .GroupBy(NameOf, StringComparer.Ordinal)
                .Select(g =>
                {
                    string[] at =
                    [
                        .. g.Where(i => i.Position != At.Head).Select(i => tell.Plan.PositionName(i.Position)),
                    ];
                    return at.Length == 0 ? g.Key
                        : at.Length == tell.Plan.Positions.Count ? $"{g.Key} (every position)"
                        : $"{g.Key} ({string.Join(", ", at)})";
                }),
        ];

    private string NameOf(StaleItem item) =>
        item.Characteristic >= 0
            ? tell.Plan.Procedure.Characteristics[item.Characteristic].Name
            : $"step {tell.Plan.Steps[item.Step].FullName}";
}
