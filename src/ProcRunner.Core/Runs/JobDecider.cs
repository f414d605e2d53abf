using ProcRunner.People;
using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>What is about the job rather than a step: notes, holding, handing over, gauges, limits, reported changes.</summary>
internal static class JobDecider
{
    /// <summary>Puts the job aside.</summary>
    public static Decision Hold(string reason) =>
        string.IsNullOrWhiteSpace(reason)
            ? Deciding.No("A hold needs a reason.", "Say why: hold because …")
            : Deciding.Yes(new RunEvent.JobHeld(reason));

    /// <summary>Writes a note.</summary>
    public static Decision Note(RunCommand.Note note)
    {
        string text = note.Text.Trim();
        return text.Length == 0
            ? Deciding.No("The note is empty.", "note …")
            : Deciding.Yes(new RunEvent.Noted(note.At, text));
    }

    /// <summary>Hands the job to another person.</summary>
    public static Decision HandOver(Deciding on, string to) =>
        on.Shop.People.TryGetValue(to, out Person? person) && person.RetiredAt is null
            ? Deciding.Yes(new RunEvent.HandedOver(on.Moment.Person, person.Id))
            : Deciding.No($"Nobody here is called {to}.", [.. on.Shop.People.Keys]);

    /// <summary>Chooses a gauge for a kind of reading.</summary>
    public static Decision ChooseGauge(Deciding on, RunCommand.ChooseGauge choose) =>
        on.Shop.Gauges.TryGetValue(choose.Gauge, out Shop.Gauge? gauge) && gauge.Kind == choose.Kind
            ? Deciding.Yes(new RunEvent.GaugeChosen(choose.Kind, gauge.Id))
            : Deciding.No(
                $"{choose.Gauge} is no {choose.Kind} gauge of this shop.",
                [.. on.Shop.Gauges.Values.Where(g => g.Kind == choose.Kind).Select(g => $"gauge {g.Kind} = {g.Id}")]
            );

    /// <summary>Chooses limits that the head spec leaves open.</summary>
    public static Decision ChooseLimit(Deciding on, RunCommand.ChooseLimit choose)
    {
        int[] open =
        [
            .. PositionsOf(on, choose.Position)
                .Where(p => on.Plan.Head.LimitOf(choose.Characteristic, on.Plan.PositionOf(p))?.Ask is not null),
        ];
        if (open.Length == 0)
        {
            return Deciding.No(
                $"The limit of {choose.Characteristic} isn't open to be chosen.",
                "A limit of the head spec is changed in the head spec, for jobs opened after."
            );
        }

        if (string.IsNullOrWhiteSpace(choose.Reason))
        {
            return Deciding.No("A limit needs its reason.", "Say where it is from: limit … because …");
        }

        Quantity?[] given = [choose.Low, choose.Aim, choose.High];
        Quantity[] figures = [.. given.Where(q => q is not null).Select(q => q!.Value)];
        Unit unit = on.Plan.TryCharacteristic(choose.Characteristic, out int index)
            ? on.Plan.CharacteristicAt(index).UnitOn(on.Plan.Head)
            : on.Plan.Head.LengthUnit;
        bool ordered =
            figures.All(q => q.Dimension == unit.Dimension)
            && figures.Zip(figures.Skip(1)).All(p => p.First.CompareTo(p.Second) <= 0);
        if (!ordered || (choose.Low is null && choose.High is null))
        {
            return Deciding.No(
                "Low, aim and high must be in order and of the right unit.",
                $"In {unit}: low … aim … high …"
            );
        }

        StaleItem[] items =
        [
            .. Staleness.From(on.State, [.. open.Select(p => new MovedName("spec." + choose.Characteristic, p))]),
        ];
        return Deciding.Yes(
            items.Length == 0
                ? null
                : new RunEvent.WentStale(items, $"the limit of {choose.Characteristic} was chosen", -1),
            new RunEvent.LimitChosen(
                choose.Characteristic,
                choose.Position,
                choose.Low,
                choose.Aim,
                choose.High,
                choose.Reason
            )
        );
    }

    /// <summary>Takes the report of a change that the procedure names.</summary>
    public static Decision Report(Deciding on, RunCommand.Report report)
    {
        Change? change = on.Plan.Procedure.Changes.FirstOrDefault(c =>
            string.Equals(c.Name, report.Change, StringComparison.OrdinalIgnoreCase)
        );
        if (change is null)
        {
            return Deciding.No(
                $"\"{report.Change}\" is no change that this procedure knows.",
                [.. on.Plan.Procedure.Changes.Select(c => $"changed {c.Name}")]
            );
        }

        StaleItem[] items = [.. Staleness.From(on.State, Staleness.Of(on.Plan, change.Moves, report.Position))];
        return Deciding.Yes(
            items.Length == 0 ? null : new RunEvent.WentStale(items, $"{change.Name} changed", -1),
            new RunEvent.ChangeReported(change.Name, report.Position)
        );
    }

    /// <summary>Leaves a step out, where the procedure allows it.</summary>
    public static Decision LeaveOut(Deciding on, RunCommand.LeaveOut leave)
    {
        if (!on.StepOf(leave.At).MayBeLeftOut)
        {
            return Deciding.No($"The procedure doesn't let {on.Plan.NameOf(leave.At)} be left out.");
        }

        return string.IsNullOrWhiteSpace(leave.Reason)
            ? Deciding.No("Leaving a step out needs a reason.", "Say why: not for this head because …")
            : Deciding.Yes(new RunEvent.LeftOut(leave.At, leave.Reason));
    }

    /// <summary>Takes back that a step was left out: it is to be done, and what signed the stage signs it again.</summary>
    public static Decision TakeBack(RunCommand.TakeBack back) =>
        string.IsNullOrWhiteSpace(back.Reason)
            ? Deciding.No("Taking it back needs a reason.", "Say why: take back … because …")
            : Deciding.Yes(
                new RunEvent.LeavingOutTakenBack(back.At, back.Reason),
                new RunEvent.Reopened([back.At], "it was left out")
            );

    private static IEnumerable<int> PositionsOf(Deciding on, int? position) =>
        position is { } one ? [one] : Enumerable.Range(0, on.Plan.Positions.Count).Prepend(At.Head);
}
