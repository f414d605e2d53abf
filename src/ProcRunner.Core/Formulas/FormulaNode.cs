namespace ProcRunner.Formulas;

/// <summary>A part of a formula whose type is proven; <see cref="Broken"/> where it could not be.</summary>
internal abstract record FormulaNode(FormulaSpan Span, FormulaType? Type)
{
    /// <summary>A number, quantity, yes, no or text that stands in the formula.</summary>
    internal sealed record Constant(FormulaSpan Span, FormulaValue Value) : FormulaNode(Span, Value.Type);

    /// <summary>A name that is read.</summary>
    internal sealed record Name(FormulaSpan Span, string Text, FormulaType NameType) : FormulaNode(Span, NameType);

    /// <summary>A quantity with its sign turned.</summary>
    internal sealed record Negative(FormulaSpan Span, FormulaNode Of) : FormulaNode(Span, Of.Type);

    /// <summary>A yes or no turned around.</summary>
    internal sealed record Opposite(FormulaSpan Span, FormulaNode Of) : FormulaNode(Span, FormulaType.YesNo);

    /// <summary>One of + - * /.</summary>
    internal sealed record Arithmetic(
        FormulaSpan Span,
        FormulaType Gives,
        FormulaArithmetic Operator,
        FormulaNode Left,
        FormulaNode Right
    ) : FormulaNode(Span, Gives);

    /// <summary>One of = &lt;&gt; &lt; &lt;= &gt; &gt;=.</summary>
    internal sealed record Comparison(FormulaSpan Span, FormulaComparison Operator, FormulaNode Left, FormulaNode Right)
        : FormulaNode(Span, FormulaType.YesNo);

    /// <summary><c>and</c> or <c>or</c>.</summary>
    internal sealed record Joint(FormulaSpan Span, bool NeedsBoth, FormulaNode Left, FormulaNode Right)
        : FormulaNode(Span, FormulaType.YesNo);

    /// <summary>A function of the table with its values.</summary>
    internal sealed record Call(
        FormulaSpan Span,
        FormulaType Gives,
        FormulaFunction Function,
        IReadOnlyList<FormulaNode> Values
    ) : FormulaNode(Span, Gives);

    /// <summary>A calculation of the shop with its values, those of all its arguments one after the other.</summary>
    internal sealed record Work(
        FormulaSpan Span,
        FormulaType Gives,
        FormulaWorkCall Calculation,
        IReadOnlyList<FormulaNode> Values
    ) : FormulaNode(Span, Gives);

    /// <summary>A part with a mistake, already reported; nothing further is said about what rests on it.</summary>
    internal sealed record Broken(FormulaSpan Span) : FormulaNode(Span, null);
}
