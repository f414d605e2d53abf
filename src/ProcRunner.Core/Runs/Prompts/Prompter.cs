using ProcRunner.Formulas;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Shop;

namespace ProcRunner.Runs.Prompts;

/// <summary>Works out prompts, and which step comes next.</summary>
public static class Prompter
{
    /// <summary>The prompt of a step at a position.</summary>
    public static Prompt At(RunState state, ShopState shop, At at) =>
        Ask(state, shop, at, [.. state.Plan.StepAt(at.Step).Shows.Select(n => Shown(state, n, at))]);

    /// <summary>The same without the numbers shown beside it, for who doesn't read them.</summary>
    public static Prompt WithoutNumbers(RunState state, ShopState shop, At at) => Ask(state, shop, at, []);

    private static Prompt Ask(RunState state, ShopState shop, At at, IReadOnlyList<NumberShown> numbers)
    {
        Plan plan = state.Plan;
        Step step = plan.StepAt(at.Step);
        StepRecord? record = state.Find(at);
        Deciding on = new(state, shop, default);
        Prompt prompt = new()
        {
            At = at,
            Step = step,
            Stage = plan.Procedure.Stages[step.StageIndex].Name,
            Position = plan.PositionName(at.Position),
            Awaits = Awaited.Done,
            ToDo = step.Subject,
            Question = record?.Question,
            Before = record?.Readings ?? [],
            Recheck = Recheck(on, at, record),
            Numbers = numbers,
        };
        AddWork(on, prompt, record);
        if (record is { Standing: StepStanding.Out })
        {
            AddWaysOn(state, prompt, record);
        }

        return prompt;
    }

    private static void AddWork(Deciding on, Prompt prompt, StepRecord? record)
    {
        switch (prompt.Step.Work)
        {
            case StepWork.Measure measure:
                AddReading(on, prompt, measure.Taking);
                break;
            case StepWork.Zero zero:
                AddZero(on, prompt, zero);
                break;
            case StepWork.Cut cut:
                AddCut(on, prompt, cut, record);
                break;
            case StepWork.Inspect inspect:
                prompt.Awaits = Awaited.Finding;
                prompt.ToDo = $"inspect: {prompt.Step.Subject}";
                prompt.Choices = [.. inspect.Findings.Select(f => f.Text)];
                break;
            case StepWork.Decide decide:
                prompt.Awaits = Awaited.Choice;
                prompt.ToDo = $"decide: {prompt.Step.Subject}";
                prompt.Choices = decide.Choices;
                break;
            case StepWork.Fit fit:
                prompt.Awaits = Awaited.Part;
                prompt.ToDo = $"{fit.Part}: part number, lot";
                break;
            case StepWork.Sign sign:
                prompt.Awaits = Awaited.Signature;
                prompt.ToDo = $"sign: {sign.Meaning}{(sign.ByLead ? " (a lead)" : "")}";
                break;
            default:
                break;
        }
    }

    /// <summary>
    /// What an entry at a step that takes a reading is read as, with what is expected: for a front that takes it place by place.
    /// Null where no reading is taken or its limits aren't known.
    /// </summary>
    public static FieldHint? FieldAt(RunState state, At at) =>
        state.Plan.StepAt(at.Step).Taking is { } taking
        && LimitFinder.Find(state, taking.Window, taking.Shift, at.Position) is LimitResult.Found { Limits: var limits }
            ? ReadingTaker.Field(state, taking, at, limits)
            : null;

    /// <summary>The step to go on with: the last one while it is open, else by the stage's walk; null when none is open.</summary>
    public static At? Next(RunState state)
    {
        IReadOnlyList<At> open = state.Outlook.Open;
        if (open.Count == 0)
        {
            return null;
        }

        if (state.LastAt is { } last && open.Contains(last))
        {
            return last;
        }

        Plan plan = state.Plan;
        int stage = plan.Steps[open[0].Step].StageIndex;
        Walk walk = plan.Procedure.Stages[stage].Walk;
        At next = open[0];
        for (int i = 1; i < open.Count && walk != Walk.ByStep && plan.Steps[open[i].Step].StageIndex == stage; i++)
        {
            next = Order(open[i]).CompareTo(Order(next)) < 0 ? open[i] : next;
        }

        return next;

        (int, int, int) Order(At at) => (walk == Walk.ByKind ? plan.KindOf(at.Position) : 0, Rank(state, at), at.Step);
    }

    // The position worked at comes first, then those after it in the order of the head.
    private static int Rank(RunState state, At at)
    {
        int last = state.LastAt?.Position ?? Runs.At.Head;
        return at.Position == Runs.At.Head ? -1
            : at.Position >= last ? at.Position
            : at.Position + state.Plan.Positions.Count;
    }

    private static string Recheck(Deciding on, At at, StepRecord? record)
    {
        if (record is null || !on.Outlook.IsRecheck(at))
        {
            return record is { Standing: StepStanding.Waiting, Cause.Length: > 0 } ? record.Cause : "";
        }

        return record.Stale
            ? record.Cause
            : on.StepOf(at)
                .Gives.Select(name => on.State.Value(name, at.Position))
                .FirstOrDefault(v => v is { Stale: true })
                ?.Cause
                ?? "";
    }

    private static void AddReading(Deciding on, Prompt prompt, Taking taking)
    {
        Characteristic characteristic = on.Plan.CharacteristicAt(on.Plan.CharacteristicIndex(taking.Characteristic));
        Unit unit = characteristic.UnitOn(on.Plan.Head);
        LimitResult found = LimitFinder.Find(on.State, taking.Window, taking.Shift, prompt.At.Position);
        prompt.Awaits = Awaited.Reading;
        prompt.ToDo = $"measure: {taking.Characteristic}";
        prompt.Unit = unit;
        prompt.Places = taking.Places;
        prompt.Gauge = taking.GaugeKind is { } kind ? GaugeChooser.IdOf(on, kind) ?? kind : "";
        prompt.Window = found is LimitResult.Found { Limits: var limits } ? limits.ShownIn(unit) : Judgement.None;
        prompt.NoLimits = found switch
        {
            LimitResult.Unknown unknown => $"no limit is known for {unknown.Name}: {unknown.Why}",
            LimitResult.NotYet notYet => notYet.Why,
            _ => "",
        };
    }

    private static void AddZero(Deciding on, Prompt prompt, StepWork.Zero zero)
    {
        Quantity? number = ZeroDecider.NumberToSet(on, prompt.At);
        prompt.Readout = on.Shop.Readout is { } set ? ReadoutWords.Of(set) : "";
        if (number is { } toSet)
        {
            prompt.Awaits = Awaited.NumberSet;
            prompt.ToDo = $"touch off by hand; set the readout to {toSet}, type what it shows";
            prompt.NumberToSet = toSet;
            prompt.Unit = toSet.Unit;
            return;
        }

        if (zero.From is { } taking)
        {
            AddReading(on, prompt, taking);
        }

        prompt.ToDo = $"touch off, cut until it just comes in all round, wipe; {prompt.ToDo}";
    }

    private static void AddCut(Deciding on, Prompt prompt, StepWork.Cut cut, StepRecord? record)
    {
        AddReading(on, prompt, cut.Taking);
        prompt.Progress = record?.Cut;
        if (record?.Cut is not { } progress || record.Standing == StepStanding.Done)
        {
            return;
        }

        (CutOutlook? outlook, string why) = Targets.For(on.State, on.Shop, prompt.At, progress);
        if (outlook is null)
        {
            prompt.NoLimits = why;
            return;
        }

        prompt.Target = outlook.Target;
        if (progress.Measures || outlook.Target is null || Targets.IsBaseStale(on.State, prompt.At))
        {
            prompt.ToDo = $"lift, wipe; {prompt.ToDo}";
            return;
        }

        string reset = outlook.Maths.Readout.StepMode ? "reset the readout to 0, " : "";
        prompt.Awaits = Awaited.Readout;
        prompt.ToDo =
            $"{reset}cut until the readout shows {outlook.Target.Show}{(outlook.Target.StopsShort ? " (short of the aim)" : "")}, type what it shows";
        prompt.Unit = outlook.Maths.Readout.Unit;
        prompt.Places = [];
    }

    private static void AddWaysOn(RunState state, Prompt prompt, StepRecord record)
    {
        bool reads = prompt.Step.Taking is not null && record.Readings.Count > 0;
        prompt.Awaits = Awaited.WayOn;
        prompt.ToDo = "out of spec: choose one of the ways on";
        prompt.WaysOn = WayDecider.Offered(state, prompt.At);
        prompt.Faults = reads ? [.. record.Readings[^1].Faults] : [$"{prompt.Step.Name} was found {record.Said}"];
    }

    private static NumberShown Shown(RunState state, ShownNumber number, At at)
    {
        RunScope scope = new(state, at.Position, staleToo: false);
        switch (number.Formula.Evaluate(scope))
        {
            case FormulaOutcome.Known { Value: FormulaValue.Amount amount }:
                Unit unit = number.ShownIn ?? PaperUnits.Of(amount.Value.Dimension, state.Plan.Head.LengthUnit);
                Quantity? value = amount.Value.TryToQuantity(unit, number.Digits, Rounding.Nearest, out Quantity shown)
                    ? shown
                    : null;
                return new NumberShown(number.Name, value, number.Formula.Working(scope, unit, number.Digits));
            case FormulaOutcome.Missing missing:
                return new NumberShown(number.Name, null, $"{missing.Name} isn't known yet");
            case FormulaOutcome.Impossible impossible:
                return new NumberShown(number.Name, null, impossible.Why);
            default:
                return new NumberShown(number.Name, null, "it gives no amount");
        }
    }
}
