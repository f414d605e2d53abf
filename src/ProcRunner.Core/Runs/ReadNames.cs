using ProcRunner.Formulas;
using ProcRunner.Procedures;

namespace ProcRunner.Runs;

/// <summary>What a step's limits, targets and worked-out values read, undeclared in the file but known from its formulas.</summary>
internal static class ReadNames
{
    private static readonly string[] Prefixes = ["all.", "kind.", "positions."];

    /// <summary>The names whose move makes the step's result stale: characteristics, and <c>decided.</c>, <c>found.</c> and <c>spec.</c> names.</summary>
    public static IEnumerable<string> Of(Step step)
    {
        HashSet<string> gives = [.. step.Gives];
        return Formulas(step).SelectMany(f => f.Names).Select(Base).Where(n => !gives.Contains(n)).Distinct();
    }

    /// <summary>A formula's name without what is asked of it: <c>[all.recession.median]</c> reads <c>recession</c>.</summary>
    public static string Base(string name)
    {
        foreach (string prefix in Prefixes)
        {
            if (name.StartsWith(prefix, StringComparison.Ordinal))
            {
                string rest = name[prefix.Length..];
                string subject = rest[
                    ..(rest.IndexOf('.', StringComparison.Ordinal) is int dot and > 0 ? dot : rest.Length)
                ];
                return prefix == "positions." ? "decided." + subject : subject;
            }
        }

        if (
            name.StartsWith("decided.", StringComparison.Ordinal) || name.StartsWith("found.", StringComparison.Ordinal)
        )
        {
            return name;
        }

        if (name.StartsWith("spec.", StringComparison.Ordinal))
        {
            string[] parts = name.Split('.');
            return $"spec.{parts[1]}";
        }

        int end = name.IndexOf('.', StringComparison.Ordinal);
        return end < 0 ? name : name[..end];
    }

    private static IEnumerable<Formula> Formulas(Step step)
    {
        if (step.Taking is { } taking)
        {
            foreach (Formula? formula in Of(taking.Window).Append(taking.Shift).Append(taking.Spread))
            {
                if (formula is not null)
                {
                    yield return formula;
                }
            }

            foreach (WorkOut work in taking.WorksOut)
            {
                yield return work.Formula;
                foreach (Formula? formula in Of(work.Window))
                {
                    if (formula is not null)
                    {
                        yield return formula;
                    }
                }
            }
        }
    }

    private static IEnumerable<Formula?> Of(Window window) =>
        window is Window.Worked worked ? [worked.Low, worked.Aim, worked.High] : [];
}
