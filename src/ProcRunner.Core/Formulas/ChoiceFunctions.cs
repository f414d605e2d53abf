namespace ProcRunner.Formulas;

/// <summary>Functions that choose, and so look only at what they choose.</summary>
internal static class ChoiceFunctions
{
    private const string Definition = "definition of this language";
    private static readonly FormulaTakes Condition = new FormulaTakes.Condition();
    private static readonly FormulaTakes Value = new FormulaTakes.SameType();

    public static IReadOnlyList<FormulaFunction> Table { get; } =
    [
        new()
        {
            Name = "if",
            Parameters = [new("condition", Condition), new("then", Value), new("otherwise", Value)],
            Gives = new FormulaGives.LikeLast(),
            Summary = "one of two values",
            Details = "Only the value that is chosen is looked at: the other may not be known yet.",
            Relation = "then, if condition is yes; else otherwise",
            Source = Definition,
            Examples = [new("if('0.52 mm' > '0.5 mm', '0.1 mm', '0 mm')", "0.1 mm"), new("if(no, 1 / 0, 2)", "2")],
            Work = new FormulaWork.Lazy(
                (values, scope) =>
                    values[0](scope) is var condition && condition.IsKnown
                        ? values[condition.Kind == FormulaCellKind.Yes ? 1 : 2](scope)
                        : condition
            ),
        },
        new()
        {
            Name = "known",
            Parameters = [new("value", Value)],
            Gives = new FormulaGives.YesNo(),
            Summary = "whether a value is there yet",
            Details = "No while any name that the value needs has no value yet.",
            Relation = "yes, if value can be worked out now",
            Source = Definition,
            Examples = [new("known('0.5 mm')", "yes")],
            Work = new FormulaWork.Lazy(
                (values, scope) =>
                    values[0](scope) is var value && value.Kind != FormulaCellKind.Impossible
                        ? FormulaCell.Of(value.IsKnown)
                        : value
            ),
        },
        new()
        {
            Name = "else",
            Parameters = [new("value", Value), new("fallback", Value)],
            Gives = new FormulaGives.LikeLast(),
            Summary = "a value, or another while it is not known",
            Details =
                "The fallback stands in for a value not known yet, never for one that can't be worked out. "
                + "A value that must be taken again counts as not known, so that no step waits for one behind it; the working "
                + "shows ? in its place.",
            Relation = "value, if it is known; else fallback",
            Source = Definition,
            Examples = [new("else('0.5 mm', '0 mm')", "0.5 mm")],
            Work = new FormulaWork.Lazy(
                (values, scope) =>
                    values[0](scope) is var first && first.Kind == FormulaCellKind.Missing ? values[1](scope) : first
            ),
        },
    ];
}
