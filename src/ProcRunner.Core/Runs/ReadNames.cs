using ProcRunner.Formulas;
using ProcRunner.Procedures;

namespace ProcRunner.Runs;

/// <summary>What a step's limits, targets and worked-out values read, undeclared in the file but known from its formulas.</summary>
internal static class ReadNames
{
    /// <summary>
    /// The names whose move makes the step's result stale: characteristics, and <c>as found.</c>, <c>decided.</c>,
    /// <c>found.</c> and <c>spec.</c> names. What the step gives itself is left out, or each position of a
    /// comparison between positions would reopen all others for ever.
    /// </summary>
    public static IEnumerable<string> Of(Step step)
    {
        HashSet<string> gives = [.. step.Gives];
        IEnumerable<string> limits = step.Taking is { } taking
            ? taking.SpecLimits.Select(l => "spec." + l.Limit)
            : [];
        return Names(step).Select(Base).OfType<string>().Concat(limits).Where(n => !gives.Contains(n)).Distinct();
    }

    /// <summary>Those of them that a step at one position reads at other positions too.</summary>
    public static IEnumerable<string> AcrossPositions(Step step)
    {
        HashSet<string> gives = [.. step.Gives];
        return step.OfHead
            ? []
            : Names(step)
                .Where(name => FormulaName.Parse(name) is FormulaName.Over or FormulaName.PositionsDecided)
                .Select(Base)
                .OfType<string>()
                .Where(n => !gives.Contains(n))
                .Distinct();
    }

    /// <summary>
    /// A formula's name without what is asked of it: <c>[all.recession.median]</c> reads <c>recession</c>. Null for what
    /// never moves: settings, features, the position itself.
    /// </summary>
    public static string? Base(string name) =>
        FormulaName.Parse(name) switch
        {
            FormulaName.Value one => one.Characteristic,
            FormulaName.ValueStatistic one => one.Characteristic,
            FormulaName.ValuePlace one => one.Characteristic,
            FormulaName.Over one => one.Characteristic,
            FormulaName.AsFound one => AsFound(one.Characteristic),
            FormulaName.SpecFigure one => "spec." + one.Figure,
            FormulaName.SpecLimit one => "spec." + one.Limit,
            FormulaName.Decided one => "decided." + one.Subject,
            FormulaName.PositionsDecided one => "decided." + one.Subject,
            FormulaName.Found one => "found." + one.Subject,
            _ => null,
        };

    /// <summary>The name under which the value moves that a characteristic came with.</summary>
    public static string AsFound(string characteristic) => "as found." + characteristic;

    private static IEnumerable<string> Names(Step step) => Formulas(step).SelectMany(f => f.Names).Distinct();

    private static IEnumerable<Formula> Formulas(Step step)
    {
        if (step.Taking is not { } taking)
        {
            return [];
        }

        IEnumerable<Formula?> all =
        [
            .. Of(taking.Window),
            taking.Shift,
            taking.Spread,
            .. taking.WorksOut.SelectMany(work => Of(work.Window).Prepend(work.Formula)),
        ];
        return all.OfType<Formula>();
    }

    private static IEnumerable<Formula?> Of(Window window) =>
        window is Window.Worked worked ? [worked.Low, worked.Aim, worked.High] : [];
}
