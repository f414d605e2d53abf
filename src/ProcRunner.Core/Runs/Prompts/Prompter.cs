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
        prompt = step.Work switch
        {
            StepWork.Measure measure => Reading(on, at, prompt, measure.Taking),
            StepWork.Zero zero => Zero(on, at, prompt, zero),
            StepWork.Cut cut => Cut(on, at, prompt, cut, record),
            StepWork.Inspect inspect => prompt with
            {
                Awaits = Awaited.Finding,
                ToDo = $"inspect: {step.Subject}",
                Choices = [.. inspect.Findings.Select(f => f.Text)],
            },
            StepWork.Decide decide => prompt with
            {
                Awaits = Awaited.Choice,
                ToDo = $"decide: {step.Subject}",
                Choices = decide.Choices,
            },
            StepWork.Fit fit => prompt with { Awaits = Awaited.Part, ToDo = $"{fit.Part}: part number, lot" },
            StepWork.Sign sign => prompt with
            {
                Awaits = Awaited.Signature,
                ToDo = $"sign: {sign.Meaning}{(sign.ByLead ? " (a lead)" : "")}",
            },
            _ => prompt,
        };
        return record is { Standing: StepStanding.Out } ? OutOfSpec(state, at, prompt, record) : prompt;
    }

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

    private static Prompt Reading(Deciding on, At at, Prompt prompt, Taking taking)
    {
        Characteristic characteristic = on.Plan.CharacteristicAt(on.Plan.CharacteristicIndex(taking.Characteristic));
        Unit unit = characteristic.UnitOn(on.Plan.Head);
        LimitResult found = LimitFinder.Find(on.State, taking.Window, taking.Shift, at.Position);
        return prompt with
        {
            Awaits = Awaited.Reading,
            ToDo = $"measure: {taking.Characteristic}",
            Unit = unit,
            Places = taking.Places,
            Gauge = taking.GaugeKind is { } kind ? on.State.Gauges.GetValueOrDefault(kind, kind) : "",
            Window = found is LimitResult.Found { Limits: var limits } ? limits.ShownIn(unit) : Judgement.None,
            NoLimits = found switch
            {
                LimitResult.Unknown unknown => $"no limit is known for {unknown.Name}: {unknown.Why}",
                LimitResult.NotYet notYet => notYet.Why,
                _ => "",
            },
        };
    }

    private static Prompt Zero(Deciding on, At at, Prompt prompt, StepWork.Zero zero)
    {
        Quantity? number = ZeroDecider.NumberToSet(on, at);
        Prompt reading = zero.From is { } taking && number is null ? Reading(on, at, prompt, taking) : prompt;
        string readout = on.Shop.Readout is { } set ? ReadoutWords.Of(set) : "";
        return number is { } toSet
            ? prompt with
            {
                Awaits = Awaited.NumberSet,
                ToDo = $"touch off by hand; set the readout to {toSet}, type what it shows",
                NumberToSet = toSet,
                Unit = toSet.Unit,
                Readout = readout,
            }
            : reading with
            {
                ToDo = $"touch off, cut until it just comes in all round, wipe; {reading.ToDo}",
                Readout = readout,
            };
    }

    private static Prompt Cut(Deciding on, At at, Prompt prompt, StepWork.Cut cut, StepRecord? record)
    {
        Prompt reading = Reading(on, at, prompt, cut.Taking) with { Progress = record?.Cut };
        if (record?.Cut is not { } progress || record.Standing == StepStanding.Done)
        {
            return reading;
        }

        (CutOutlook? outlook, string why) = Targets.For(on.State, on.Shop, at, progress);
        if (outlook is null)
        {
            return reading with { NoLimits = why };
        }

        if (progress.Measures || outlook.Target is null || Targets.IsBaseStale(on.State, at))
        {
            return reading with { Target = outlook.Target, ToDo = $"lift, wipe; {reading.ToDo}" };
        }

        string reset = outlook.Maths.Readout.StepMode ? "reset the readout to 0, " : "";
        return reading with
        {
            Awaits = Awaited.Readout,
            ToDo =
                $"{reset}cut until the readout shows {outlook.Target.Show}{(outlook.Target.StopsShort ? " (short of the aim)" : "")}, type what it shows",
            Target = outlook.Target,
            Unit = outlook.Maths.Readout.Unit,
            Places = [],
        };
    }

    private static Prompt OutOfSpec(RunState state, At at, Prompt prompt, StepRecord record)
    {
        bool reads = prompt.Step.Taking is not null && record.Readings.Count > 0;
        return prompt with
        {
            Awaits = Awaited.WayOn,
            ToDo = "out of spec: choose one of the ways on",
            WaysOn = WayDecider.Offered(state, at),
            Faults = reads ? [.. record.Readings[^1].Faults] : [$"{prompt.Step.Name} was found {record.Said}"],
        };
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
