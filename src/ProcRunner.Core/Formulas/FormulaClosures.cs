using ProcRunner.Quantities;

namespace ProcRunner.Formulas;

/// <summary>Turns a proven tree into closures over exact numbers. Those of plain arithmetic make no objects.</summary>
internal static class FormulaClosures
{
    /// <summary>The closure of a part that is not broken.</summary>
    public static FormulaClosure Of(FormulaNode node) =>
        node switch
        {
            FormulaNode.Constant constant => Always(FormulaCell.Of(constant.Value)),
            FormulaNode.Name { NameType: FormulaType.OfQuantity of } name => Amount(name, of.Dimension),
            FormulaNode.Name name => Name(name),
            FormulaNode.Negative negative => Negative(Of(negative.Of)),
            FormulaNode.Arithmetic sum => Arithmetic(sum.Operator, Of(sum.Left), Of(sum.Right)),
            FormulaNode.Opposite opposite => Opposite(Of(opposite.Of)),
            FormulaNode.Comparison { Left.Type: FormulaType.OfQuantity } amounts => Order(
                amounts.Operator,
                Of(amounts.Left),
                Of(amounts.Right)
            ),
            FormulaNode.Comparison others => Sameness(others.Operator, Of(others.Left), Of(others.Right)),
            FormulaNode.Joint joint => Joint(joint.NeedsBoth, Of(joint.Left), Of(joint.Right)),
            FormulaNode.Call { Function.Work: FormulaWork.Numbers numbers } call => Numbers(
                numbers.Of,
                [.. call.Values.Select(Of)]
            ),
            FormulaNode.Call { Function.Work: FormulaWork.Lazy lazy } call => Lazy(lazy, [.. call.Values.Select(Of)]),
            FormulaNode.Work work => Work(work.Calculation, [.. work.Values.Select(Of)]),
            _ => throw new InvalidOperationException("Only a formula without problems is compiled."),
        };

    private static FormulaClosure Always(FormulaCell cell) => _ => cell;

    // A scope that breaks its promise on the type must not make a formula throw.
    private static FormulaClosure Amount(FormulaNode.Name name, Dimension promised) =>
        scope =>
            scope.AmountOf(name.Text) is { } amount && amount.Dimension == promised
                ? FormulaCell.Of(amount.Value)
                : NoAmount(scope, name);

    private static FormulaCell NoAmount(IFormulaScope scope, FormulaNode.Name name) =>
        scope.ValueOf(name.Text) is { } other ? Broken(name, other) : FormulaCell.Missing(name.Text);

    private static FormulaClosure Name(FormulaNode.Name name) =>
        scope =>
            scope.ValueOf(name.Text) is not { } value ? FormulaCell.Missing(name.Text)
            : value.Type == name.NameType ? FormulaCell.Of(value)
            : Broken(name, value);

    private static FormulaCell Broken(FormulaNode.Name name, FormulaValue value) =>
        FormulaCell.Impossible(
            $"[{name.Text}] is {FormulaCheckNotes.WithArticle(value.Type)} and was promised as {FormulaCheckNotes.WithArticle(name.NameType)}"
        );

    private static FormulaClosure Lazy(FormulaWork.Lazy work, IReadOnlyList<FormulaClosure> values) =>
        scope => work.Of(values, scope);

    private static FormulaClosure Work(FormulaWorkCall call, FormulaClosure[] values) =>
        scope =>
        {
            FormulaCell[] cells = new FormulaCell[values.Length];
            for (int i = 0; i < cells.Length; i++)
            {
                cells[i] = values[i](scope);
                if (!cells[i].IsKnown)
                {
                    return cells[i];
                }
            }

            return call.Of(cells);
        };

    private static FormulaClosure Opposite(FormulaClosure inner) =>
        scope => inner(scope) is var found && found.IsKnown ? FormulaCell.Of(found.Kind == FormulaCellKind.No) : found;

    private static FormulaClosure Joint(bool needsBoth, FormulaClosure left, FormulaClosure right)
    {
        FormulaCellKind goesOn = needsBoth ? FormulaCellKind.Yes : FormulaCellKind.No;
        return scope => left(scope) is var first && first.Kind == goesOn ? right(scope) : first;
    }

    private static FormulaClosure Negative(FormulaClosure inner) =>
        scope => inner(scope) is var found && found.IsKnown ? FormulaCell.Of(-found.Number) : found;

    private static FormulaClosure Arithmetic(FormulaArithmetic sign, FormulaClosure left, FormulaClosure right) =>
        scope =>
        {
            FormulaCell one = left(scope);
            if (!one.IsKnown)
            {
                return one;
            }

            FormulaCell other = right(scope);
            return !other.IsKnown
                ? other
                : FormulaCell.Of(
                    sign switch
                    {
                        FormulaArithmetic.Plus => one.Number + other.Number,
                        FormulaArithmetic.Minus => one.Number - other.Number,
                        FormulaArithmetic.Times => one.Number * other.Number,
                        _ => FormulaNumber.Ratio(one.Number, other.Number),
                    }
                );
        };

    private static FormulaClosure Numbers(FormulaNumbersWork work, FormulaClosure[] values) =>
        scope =>
        {
            EightNumbers few = default;
            Span<Rational> numbers = values.Length <= EightNumbers.Count ? few : new Rational[values.Length];
            for (int i = 0; i < values.Length; i++)
            {
                FormulaCell found = values[i](scope);
                if (!found.IsKnown)
                {
                    return found;
                }

                numbers[i] = found.Number;
            }

            return FormulaCell.Of(work(numbers[..values.Length]));
        };

    private static FormulaClosure Order(FormulaComparison sign, FormulaClosure left, FormulaClosure right) =>
        scope =>
        {
            FormulaCell one = left(scope);
            if (!one.IsKnown)
            {
                return one;
            }

            FormulaCell other = right(scope);
            return other.IsKnown ? FormulaCell.Of(Holds(sign, one.Number.CompareTo(other.Number))) : other;
        };

    private static FormulaClosure Sameness(FormulaComparison sign, FormulaClosure left, FormulaClosure right) =>
        scope =>
        {
            FormulaCell one = left(scope);
            if (!one.IsKnown)
            {
                return one;
            }

            FormulaCell other = right(scope);
            return other.IsKnown
                ? FormulaCell.Of(Holds(sign, one.Kind == other.Kind && Equals(one.Value, other.Value) ? 0 : 1))
                : other;
        };

    private static bool Holds(FormulaComparison sign, int order) =>
        sign switch
        {
            FormulaComparison.Equal => order == 0,
            FormulaComparison.NotEqual => order != 0,
            FormulaComparison.Below => order < 0,
            FormulaComparison.NotAbove => order <= 0,
            FormulaComparison.Above => order > 0,
            _ => order >= 0,
        };
}
