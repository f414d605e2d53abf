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
        if (taking.WorksOut.Count == 0)
        {
            return ([], "");
        }

        List<WorkedValue> worked = new(taking.WorksOut.Count);
        RunScope scope = new(on.State, at.Position, staleToo: false, new JustTaken(reading, worked));
        foreach (WorkOut work in taking.WorksOut)
        {
            Unit unit = on.Plan.CharacteristicAt(on.Plan.CharacteristicIndex(work.Name)).UnitOn(on.Plan.Head);
            if (!work.Formula.TryAmount(scope, out Exact amount))
            {
                return ([], $"{work.Name} can't be worked out: {WhyNot(work.Formula.Evaluate(scope))}.");
            }

            (Exact? value, Quantity kept, string working) = work.Selects is { } table
                ? Selected(table, amount, on.Plan.Head.LengthUnit)
                : (amount, Show.Kept(amount, unit), work.Formula.Working(scope, unit, Show.DigitsOf(unit), amount));
            if (value is not { } exact)
            {
                return ([], $"{work.Name} can't be selected: {working}.");
            }

            LimitResult limits = LimitFinder.Find(on.State, work.Window, shift: null, at.Position, scope);
            if (limits is not LimitResult.Found found)
            {
                string why = limits is LimitResult.NotYet notYet ? notYet.Why : "no limit is known for it";
                return ([], $"The limits of {work.Name} can't be worked out: {why}.");
            }

            Judgement judgement = Judging.Of(work.Name, [exact], unit, found.Limits, spread: null);
            worked.Add(new WorkedValue(work.Name, kept, working, judgement));
        }

        return (worked, "");
    }

    private static string WhyNot(FormulaOutcome outcome) =>
        outcome switch
        {
            FormulaOutcome.Missing missing => $"{missing.Name} isn't known, or is to be taken again",
            FormulaOutcome.Impossible impossible => impossible.Why,
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    // What a row gives is kept as it is written; the row's bounds are in the unit in which the table is written.
    private static (Exact? Value, Quantity Kept, string Working) Selected(
        SelectionTable table,
        Exact value,
        Unit length
    )
    {
        Unit unit = (table.Rows[0].UpTo ?? table.Rows[0].Over)?.Unit ?? length;
        string shown = Show.Plain(value, unit);
        return table.Find(value) is { } row
            ? (Exact.Of(row.Gives), row.Gives, $"{shown} is {row.Bounds}: {row.Gives}")
            : (null, default, $"{shown} is in no row of its table, which holds {table.Bounds}");
    }
}
