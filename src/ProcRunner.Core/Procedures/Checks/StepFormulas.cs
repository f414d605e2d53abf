using ProcRunner.Formulas;

namespace ProcRunner.Procedures.Checks;

/// <summary>The formulas of a step by what has a value when they are worked out.</summary>
internal static class StepFormulas
{
    /// <summary>All formulas.</summary>
    public static IEnumerable<Formula> All(Step step) => Before(step).Concat(After(step).Select(one => one.Formula));

    /// <summary>Those worked out before the step is done: they see earlier steps alone.</summary>
    public static IEnumerable<Formula> Before(Step step)
    {
        IEnumerable<Formula?> ofWork = step.Work switch
        {
            StepWork.Cut cut => new Formula?[] { cut.StopShort, cut.AgreeWithin },
            _ => [],
        };
        IEnumerable<Formula?> ofTaking = step.Taking is { } taking
            ? [.. OfWindow(taking.Window), taking.Shift, taking.Spread]
            : [];
        return ofWork
            .Concat(step.Shows.Select(shown => (Formula?)shown.Formula))
            .Concat(ofTaking)
            .Prepend(step.OnlyWhere)
            .OfType<Formula>();
    }

    /// <summary>
    /// Those worked out after the reading, each with what the step itself has given by then: one set that grows as the
    /// sequence is gone through, good until the next item is asked for.
    /// </summary>
    public static IEnumerable<(Formula Formula, IReadOnlySet<string> Given)> After(Step step)
    {
        if (step.Taking is not { } taking)
        {
            yield break;
        }

        HashSet<string> given = new(StringComparer.Ordinal) { taking.Characteristic };
        foreach (WorkOut work in taking.WorksOut)
        {
            yield return (work.Formula, given);
            given.Add(work.Name);
            foreach (Formula formula in OfWindow(work.Window))
            {
                yield return (formula, given);
            }
        }
    }

    private static IEnumerable<Formula> OfWindow(Window window) =>
        window is Window.Worked worked ? new Formula?[] { worked.Low, worked.Aim, worked.High }.OfType<Formula>() : [];
}
