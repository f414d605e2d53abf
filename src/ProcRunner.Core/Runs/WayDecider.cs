using ProcRunner.Procedures;

namespace ProcRunner.Runs;

/// <summary>Dispositions of a result out of spec.</summary>
internal static class WayDecider
{
    /// <summary>The ways on that a step at a position offers now; empty when its result isn't out of spec.</summary>
    public static IReadOnlyList<WayOn> Offered(RunState state, At at)
    {
        if (state.Find(at) is not { Standing: StepStanding.Out } record)
        {
            return [];
        }

        Step step = state.Plan.StepAt(at.Step);
        bool retest = step.Taking?.RetestFirst is not null && record.Fails <= 1;
        WayOn[] again = retest ? [.. step.WaysOn.Where(w => w.Kind == WayKind.Again)] : [];
        return again.Length > 0 ? again : step.WaysOn;
    }

    /// <summary>Takes one of them.</summary>
    public static Decision Take(Deciding on, RunCommand.TakeWay command)
    {
        IReadOnlyList<WayOn> offered = Offered(on.State, command.At);
        WayOn? way = offered.FirstOrDefault(w =>
            string.Equals(w.Text, command.Way, StringComparison.OrdinalIgnoreCase)
        );
        if (way is null)
        {
            return offered.Count == 0
                ? Deciding.No($"Nothing is out of spec at {on.Plan.NameOf(command.At)}.")
                : Deciding.No($"\"{command.Way}\" is no way on from here.", [.. offered.Select(w => w.Text)]);
        }

        return way.Kind is WayKind.Concession or WayKind.Scrap
            ? ByLead(on, command, way)
            : Deciding.Yes([.. Rework(on, command.At, way, command.Reason)]);
    }

    private static Decision ByLead(Deciding on, RunCommand.TakeWay command, WayOn way)
    {
        if (string.IsNullOrWhiteSpace(command.Reason))
        {
            return Deciding.No($"A {way.Text} needs a reason.", $"Say why: {way.Text} because …");
        }

        if (command.Mark is not { } mark)
        {
            return Deciding.No($"A {way.Text} needs a lead's PIN.", "Ask a lead to sign for it.");
        }

        byte[] Signed() => SignedBytes.OfWay(on.State, command.At, way.Kind, command.Reason, mark);
        string covers = SignedBytes.CoversOfWay(on.State, command.At, command.Reason).ToString();
        if (Marks.Fault(on, mark, Signed, byLead: true) is { } fault)
        {
            return fault;
        }

        return way.Kind == WayKind.Scrap
            ? Deciding.Yes(
                new RunEvent.WayTaken(command.At, way.Text, way.Kind, command.Reason),
                new RunEvent.HeadScrapped(command.At, command.Reason, mark, covers)
            )
            : Deciding.Yes(
                new RunEvent.WayTaken(command.At, way.Text, way.Kind, command.Reason),
                new RunEvent.Conceded(command.At, command.Reason, mark, covers)
            );
    }

    private static IEnumerable<RunEvent?> Rework(Deciding on, At at, WayOn way, string reason)
    {
        yield return new RunEvent.WayTaken(at, way.Text, way.Kind, reason);
        List<MovedName> moved = [.. Staleness.Of(on.Plan, way.Moves, at.Position)];
        foreach ((string subject, string choice) in way.Decides)
        {
            int decider = on.Plan.DecidersOf(subject)[0];
            int position = on.StepOf(new At(decider, 0)).OfHead ? At.Head : at.Position;
            if (on.State.ChoiceOf(subject, position) == choice)
            {
                continue;
            }

            yield return new RunEvent.ChoiceMade(new At(decider, position), choice);
            moved.Add(new MovedName("decided." + subject, position));
        }

        if (way.BackTo is not { } backTo)
        {
            yield break;
        }

        At[] items = [.. Range(on, at, backTo)];
        StaleItem[] stale =
        [
            .. Staleness.From(on.State, moved).Where(i => i.Step < 0 || !items.Contains(new At(i.Step, i.Position))),
        ];
        if (stale.Length > 0)
        {
            yield return new RunEvent.WentStale(stale, way.Text, backTo);
        }

        yield return new RunEvent.Reopened(items, way.Text);
    }

    // From the step gone back to up to this one: everything begun at this position; of the head only those two.
    private static IEnumerable<At> Range(Deciding on, At at, int backTo)
    {
        HashSet<At> items = [];
        foreach (Step step in on.Plan.Steps)
        {
            if (step.Index < backTo || step.Index > at.Step)
            {
                continue;
            }

            At item = new(step.Index, step.OfHead ? At.Head : at.Position);
            bool named = step.Index == backTo || step.Index == at.Step;
            bool samePlace = step.OfHead == (at.Position == At.Head);
            if ((named || samePlace) && step.Work is not StepWork.Sign && on.State.Find(item) is not null)
            {
                items.Add(item);
            }

            // A cut done over starts from a zero set anew.
            At? zero = step.Work is StepWork.Cut cut ? item with { Step = cut.ZeroStep } : null;
            if (items.Contains(item) && zero is { } own && on.State.Find(own) is not null)
            {
                items.Add(own);
            }
        }

        return items.OrderBy(item => item.Step);
    }
}
