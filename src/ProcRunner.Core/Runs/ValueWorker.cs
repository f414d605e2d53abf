using ProcRunner.Formulas;
using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>Works out the values that follow from a reading, each judged against its own limits.</summary>
internal static class ValueWorker
{
    /// <summary>The worked-out values in order, each seeing those before it; or why one can't be worked out.</summary>
    public static (IReadOnlyList<WorkedValue> Worked, string NotYet) Work(
        Deciding on,
        At at,
        Taking taking,
        TakenReading reading
    )
    {
        List<WorkedValue> worked = [];
        foreach (WorkOut work in taking.WorksOut)
        {
            RunScope scope = new(on.State, at.Position, staleToo: false, new JustTaken(reading, worked));
            Unit unit = on.Plan.Procedure.Characteristics[on.Plan.CharacteristicIndex(work.Name)].UnitOn(on.Plan.Head);
            switch (work.Formula.Evaluate(scope))
            {
                case FormulaOutcome.Known { Value: FormulaValue.Amount amount }:
                    LimitResult limits = LimitFinder.Find(on.State, work.Window, shift: null, at.Position, scope);
                    if (limits is not LimitResult.Found found)
                    {
                        string why = limits is LimitResult.NotYet notYet ? notYet.Why : "no limit is known for it";
                        return ([], $"The limits of {work.Name} can't be worked out: {why}.");
                    }

                    Judgement judgement = Judging.Of(work.Name, [amount.Value], unit, found.Limits, spread: null);
                    string working = work.Formula.Working(scope, unit, Show.DigitsOf(unit));
                    worked.Add(new WorkedValue(work.Name, Show.In(amount.Value, unit), working, judgement));
                    break;
                case FormulaOutcome.Missing missing:
                    return (
                        [],
                        $"{work.Name} can't be worked out: {missing.Name} isn't known, or is to be taken again."
                    );
                case FormulaOutcome.Impossible impossible:
                    return ([], $"{work.Name} can't be worked out: {impossible.Why}.");
                default:
                    throw new System.Diagnostics.UnreachableException();
            }
        }

        return (worked, "");
    }
}
