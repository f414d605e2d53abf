using ProcRunner.Formulas;
using ProcRunner.Procedures;

namespace ProcRunner.Runs;

/// <summary>What a step's limits, targets and worked-out values read, undeclared in the file but known from its formulas.</summary>
internal static class ReadNames
{
    /// <summary>
    /// What each value that a step gives is worked out or judged from: characteristics, and <c>as found.</c>,
    /// <c>decided.</c>, <c>found.</c> and <c>spec.</c> names. Never the value itself.
    /// </summary>
    public static IEnumerable<ReadName> OfValues(Step step)
    {
        if (step.Taking is not { } taking)
        {
            return [];
        }

        IEnumerable<Formula?> judged = [.. Of(taking.Window), taking.Shift, taking.Spread];
        HashSet<string> gives = [.. step.Gives];
        return Of(step, gives, taking.Characteristic, judged, taking.Window)
            .Concat(
                taking.WorksOut.SelectMany(work =>
                    Of(step, gives, work.Name, Of(work.Window).Prepend(work.Formula), work.Window)
                )
            )
            .Distinct();
    }

    /// <summary>The names a step needs values of before it can be done, which it doesn't give itself.</summary>
    public static IEnumerable<string> Of(Step step)
    {
        HashSet<string> gives = [.. step.Gives];
        return OfValues(step).Select(read => read.Name).Where(name => !gives.Contains(name)).Distinct();
    }

    /// <summary>
    /// A formula's name without what is asked of it: <c>[all.recession.median]</c> reads <c>recession</c>. Null for what
    /// never moves: settings, features, the position itself.
    /// </summary>
    public static string? Base(string name) =>
        FormulaName.Parse(name) switch
        {
            { ReadsNow: { } characteristic } => characteristic,
            FormulaName.AsFound one => AsFound(one.Characteristic),
            FormulaName.SpecFigure one => "spec." + one.Figure,
            FormulaName.SpecLimit one => "spec." + one.Limit,
            FormulaName.Decided one => "decided." + one.Subject,
            FormulaName.PositionsDecided one => "decided." + one.Subject,
            FormulaName.Found one => "found." + one.Subject,
            _ => null,
        };

    /// <summary>True for a name that reads what is so at other positions.</summary>
    public static bool Compares(string name) =>
        FormulaName.Parse(name) is FormulaName.Over or FormulaName.OverEach or FormulaName.PositionsDecided;

    /// <summary>The name under which the value moves that a characteristic came with.</summary>
    public static string AsFound(string characteristic) => "as found." + characteristic;

    // A value compared with those of other positions, which the same step gives there, would reopen them all for ever:
    // so only what another step gives counts across positions.
    private static IEnumerable<ReadName> Of(
        Step step,
        HashSet<string> gives,
        string value,
        IEnumerable<Formula?> formulas,
        Window window
    )
    {
        foreach (string name in formulas.OfType<Formula>().SelectMany(f => f.Names))
        {
            if (Base(name) is { } read && read != value)
            {
                yield return new ReadName(read, value, Compares(name) && !step.OfHead && !gives.Contains(read));
            }
        }

        if (window is Window.FromSpec limit)
        {
            yield return new ReadName("spec." + limit.LimitName, value, AcrossPositions: false);
        }
    }

    private static IEnumerable<Formula?> Of(Window window) =>
        window is Window.Worked worked ? [worked.Low, worked.Aim, worked.High] : [];
}
