using ProcRunner.Formulas;
using ProcRunner.Problems;

namespace ProcRunner.Procedures.Checks;

/// <summary>Finds steps whose condition never holds, and conditions that wait for a choice that doesn't exist.</summary>
internal sealed class ReachCheck(Procedure procedure, SourcePlaces places)
{
    // Stands for every kind of position that the procedure doesn't mention.
    private const string OtherKind = "any other";

    private readonly ProcedureNames _names = ProcedureNames.Of(procedure);

    private readonly string[] _kinds =
    [
        .. procedure
            .Steps.SelectMany(step => step.Kinds)
            .Concat(
                procedure
                    .Steps.SelectMany(StepFormulas.All)
                    .SelectMany(formula => Conditions.Compared(formula.Root))
                    .Where(one => one.Name == "kind")
                    .Select(one => one.Text)
            )
            .Append(OtherKind)
            .Distinct(StringComparer.Ordinal),
    ];

    public IEnumerable<Problem> Run()
    {
        foreach (Step step in procedure.Steps)
        {
            bool sound = true;
            foreach (Formula formula in StepFormulas.All(step))
            {
                foreach ((string name, string text) in Conditions.Compared(formula.Root))
                {
                    if (Unknown(name, text) is { } why)
                    {
                        sound &= !ReferenceEquals(formula, step.OnlyWhere);
                        yield return new Problem("PR-P01", places.Of(formula, step.Source), why);
                    }
                }
            }

            if (
                sound
                && step.OnlyWhere is { } condition
                && !Conditions.CanHold(condition, name => ValuesOf(name, step))
            )
            {
                yield return new Problem(
                    "PR-P03",
                    places.Of(condition, step.Source),
                    $"'{step.FullName}' can't be reached: no case makes {condition.Text} hold; correct it or take the step out"
                );
            }
        }
    }

    private string? Unknown(string name, string text)
    {
        IReadOnlyList<string>? words = ChoicesOf(name);
        if (words is null || words.Contains(text, StringComparer.Ordinal))
        {
            return null;
        }

        IReadOnlyList<string> near = NearNames.Of(text, words);
        string hint = near.Count > 0 ? $"did you mean '{near[0]}'?" : $"there are {string.Join(", ", words)}";
        return $"[{name}] is never '{text}'; {hint}";
    }

    private IReadOnlyList<string>? ChoicesOf(string name) =>
        FormulaName.Parse(name) switch
        {
            FormulaName.Decided one => _names.Decision(one.Subject)?.Words,
            FormulaName.Found one => _names.Finding(one.Subject)?.Words,
            _ => null,
        };

    private IReadOnlyList<string>? ValuesOf(string name, Step step) =>
        FormulaName.Parse(name) switch
        {
            FormulaName.OwnKind => step.Kinds.Count > 0 ? step.Kinds : _kinds,
            FormulaName.Feature => ["yes", "no"],
            _ => ChoicesOf(name),
        };
}
