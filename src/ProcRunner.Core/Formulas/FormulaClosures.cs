using ProcRunner.Quantities;

namespace ProcRunner.Formulas;

/// <summary>Turns a proven tree into closures over exact numbers.</summary>
internal static class FormulaClosures
{
    private static readonly FormulaOutcome Yes = new FormulaOutcome.Known(new FormulaValue.Truth(true));
    private static readonly FormulaOutcome No = new FormulaOutcome.Known(new FormulaValue.Truth(false));

    /// <summary>The closure of a part that is not broken.</summary>
    public static FormulaClosure Of(FormulaNode node) =>
        node switch
        {
            FormulaNode.Constant constant => Always(constant.Value),
            FormulaNode.Name name => Name(name),
            FormulaNode.Negative negative => Number(negative, all => -all[0], [negative.Of]),
            FormulaNode.Arithmetic sum => Number(sum, Of(sum.Operator), [sum.Left, sum.Right]),
            FormulaNode.Opposite opposite => Opposite(Of(opposite.Of)),
            FormulaNode.Comparison comparison => Comparison(comparison),
            FormulaNode.Joint joint => Joint(joint.NeedsBoth, Of(joint.Left), Of(joint.Right)),
            FormulaNode.Call { Function.Work: FormulaWork.Numbers numbers } call => Number(
                call,
                numbers.Of,
                call.Values
            ),
            FormulaNode.Call { Function.Work: FormulaWork.Lazy lazy } call => Lazy(lazy, [.. call.Values.Select(Of)]),
            _ => throw new InvalidOperationException("Only a formula without problems is compiled."),
        };

    private static FormulaClosure Always(FormulaValue value)
    {
        FormulaOutcome outcome = new FormulaOutcome.Known(value);
        return _ => outcome;
    }

    // A scope that breaks its promise on the type must not make a formula throw.
    private static FormulaClosure Name(FormulaNode.Name name) =>
        scope =>
            scope.ValueOf(name.Text) is not { } value ? new FormulaOutcome.Missing(name.Text)
            : value.Type == name.NameType ? new FormulaOutcome.Known(value)
            : new FormulaOutcome.Impossible(
                $"[{name.Text}] is {FormulaCheckNotes.WithArticle(value.Type)} and was promised as {FormulaCheckNotes.WithArticle(name.NameType)}"
            );

    private static FormulaClosure Lazy(FormulaWork.Lazy work, IReadOnlyList<FormulaClosure> values) =>
        scope => work.Of(values, scope);

    private static FormulaClosure Opposite(FormulaClosure inner) =>
        scope => inner(scope) is var found && Holds(found) is { } holds ? Truth(!holds) : found;

    private static FormulaClosure Joint(bool needsBoth, FormulaClosure left, FormulaClosure right) =>
        scope => left(scope) is var first && Holds(first) == needsBoth ? right(scope) : first;

    private static FormulaClosure Number(
        FormulaNode node,
        Func<IReadOnlyList<Rational>, FormulaNumber> work,
        IReadOnlyList<FormulaNode> values
    )
    {
        Dimension dimension = ((FormulaType.OfQuantity)node.Type!).Dimension;
        FormulaClosure[] closures = [.. values.Select(Of)];
        return scope =>
        {
            Rational[] numbers = new Rational[closures.Length];
            for (int i = 0; i < numbers.Length; i++)
            {
                if (closures[i](scope) is var found && Amount(found) is { } number)
                {
                    numbers[i] = number;
                }
                else
                {
                    return found;
                }
            }

            FormulaNumber result = work(numbers);
            return result.Why is { } why
                ? new FormulaOutcome.Impossible(why)
                : new FormulaOutcome.Known(new FormulaValue.Amount(new Exact(result.Value, dimension)));
        };
    }

    private static Func<IReadOnlyList<Rational>, FormulaNumber> Of(FormulaArithmetic sign) =>
        sign switch
        {
            FormulaArithmetic.Plus => all => all[0] + all[1],
            FormulaArithmetic.Minus => all => all[0] - all[1],
            FormulaArithmetic.Times => all => all[0] * all[1],
            _ => all => FormulaNumber.Ratio(all[0], all[1]),
        };

    private static FormulaClosure Comparison(FormulaNode.Comparison comparison)
    {
        FormulaClosure left = Of(comparison.Left);
        FormulaClosure right = Of(comparison.Right);
        return scope =>
        {
            FormulaOutcome first = left(scope);
            if (first is not FormulaOutcome.Known one)
            {
                return first;
            }

            FormulaOutcome second = right(scope);
            return second is FormulaOutcome.Known other
                ? Truth(Compare(comparison.Operator, one.Value, other.Value))
                : second;
        };
    }

    private static bool Compare(FormulaComparison sign, FormulaValue left, FormulaValue right)
    {
        int order = (left, right) switch
        {
            (FormulaValue.Amount one, FormulaValue.Amount other) => one.Value.CompareTo(other.Value),
            _ => left == right ? 0 : 1,
        };
        return sign switch
        {
            FormulaComparison.Equal => order == 0,
            FormulaComparison.NotEqual => order != 0,
            FormulaComparison.Below => order < 0,
            FormulaComparison.NotAbove => order <= 0,
            FormulaComparison.Above => order > 0,
            _ => order >= 0,
        };
    }

    private static FormulaOutcome Truth(bool holds) => holds ? Yes : No;

    private static bool? Holds(FormulaOutcome outcome) =>
        outcome is FormulaOutcome.Known { Value: FormulaValue.Truth truth } ? truth.Holds : null;

    private static Rational? Amount(FormulaOutcome outcome) =>
        outcome is FormulaOutcome.Known { Value: FormulaValue.Amount amount } ? amount.Value.Value : null;
}
