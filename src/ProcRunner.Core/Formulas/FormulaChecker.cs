using NCalc;
using NCalc.Visitors;
using ProcRunner.Quantities;

namespace ProcRunner.Formulas;

/// <summary>Proves the types and units of a formula's tree and turns it into one that carries them.</summary>
internal sealed class FormulaChecker : ILogicalExpressionVisitor<FormulaNode>
{
    private readonly IReadOnlyList<FormulaToken> _tokens;
    private readonly IFormulaNames _names;
    private readonly FormulaCheckNotes _notes;
    private readonly FormulaCallCheck _calls;

    public FormulaChecker(IReadOnlyList<FormulaToken> tokens, IFormulaNames names, FormulaCheckNotes notes)
    {
        _tokens = tokens;
        _names = names;
        _notes = notes;
        _calls = new FormulaCallCheck(this, notes);
    }

    /// <summary>Checks the whole tree; <see cref="FormulaNode.Broken"/> is reported already.</summary>
    /// <param name="tree">The tree.</param>
    /// <param name="wanted">The type needed; null if any will do.</param>
    public FormulaNode Check(LogicalExpression tree, FormulaType? wanted)
    {
        FormulaNode node = Read(tree, asText: wanted is FormulaType.OfWord);
        return node.Type is null || wanted is null || node.Type == wanted
            ? node
            : _notes.Wrong(node, wanted, "what is needed here");
    }

    /// <summary>Reports the names and functions among the tokens that don't exist, whatever stands around them.</summary>
    public void ReportUnknown()
    {
        foreach (FormulaToken token in _tokens)
        {
            if (token.Kind == FormulaTokenKind.Name)
            {
                Name(token);
            }
            else if (token.Kind == FormulaTokenKind.Function && FormulaWorkNames.Find(token.Text) is null)
            {
                _calls.Find(token);
            }
        }
    }

    /// <summary>The token of a part that is a quoted text, or null.</summary>
    public FormulaToken? Quoted(LogicalExpression tree) => IsQuoted(tree) ? TokenOf(tree) : null;

    /// <summary>The token of a part that only names the values behind it, or null.</summary>
    public FormulaToken? Label(LogicalExpression tree) =>
        tree is Identifier leaf && FormulaGrammar.TokenOf(leaf.Name, _tokens) is { Kind: FormulaTokenKind.Label } label
            ? label
            : null;

    /// <summary>Checks parts that should be of one type: if one of them is a text, quoted ones are texts too.</summary>
    public FormulaNode[] Together(IReadOnlyList<LogicalExpression> trees)
    {
        FormulaNode?[] nodes = [.. trees.Select(tree => IsQuoted(tree) ? null : tree.Accept(this))];
        bool asText = nodes.Any(node => node?.Type is FormulaType.OfWord);
        bool unsure = nodes.Any(node => node is { Type: null });
        return
        [
            .. nodes.Select(
                (node, i) =>
                    node
                    ?? (
                        unsure && !Reads(TokenOf(trees[i]))
                            ? new FormulaNode.Broken(TokenOf(trees[i]).Span)
                            : Read(trees[i], asText)
                    )
            ),
        ];
    }

    public FormulaNode Visit(Identifier expression) => Leaf(FormulaGrammar.TokenOf(expression.Name, _tokens));

    public FormulaNode Visit(UnaryExpression expression)
    {
        FormulaNode inner = expression.Expression.Accept(this);
        if (inner.Type is null)
        {
            return inner;
        }

        return (expression.Type, inner.Type) switch
        {
            (UnaryExpressionType.Not, FormulaType.OfTruth) => new FormulaNode.Opposite(inner.Span, inner),
            (UnaryExpressionType.Not, _) => _notes.Report(
                inner.Span,
                FormulaFault.Kind,
                $"{_notes.IsA(inner)}, but 'not' turns yes or no around; a comparison behind it stands in parentheses"
            ),
            (UnaryExpressionType.Negate, FormulaType.OfQuantity { Dimension.IsTemperaturePoint: false }) =>
                new FormulaNode.Negative(inner.Span, inner),
            (UnaryExpressionType.Negate, _) => _notes.Report(
                inner.Span,
                FormulaFault.Kind,
                $"{_notes.IsA(inner)}, which has no sign to turn"
            ),
            _ => Strange(inner.Span),
        };
    }

    public FormulaNode Visit(BinaryExpression expression)
    {
        if (expression.Type is BinaryExpressionType.And or BinaryExpressionType.Or)
        {
            return Joint(expression);
        }

        FormulaNode[] both = Together([expression.LeftExpression, expression.RightExpression]);
        FormulaSpan span = both[0].Span.To(both[1].Span);
        if (both[0].Type is null || both[1].Type is null)
        {
            return new FormulaNode.Broken(span);
        }

        return expression.Type switch
        {
            BinaryExpressionType.Plus => Sum(span, FormulaArithmetic.Plus, both[0], both[1]),
            BinaryExpressionType.Minus => Sum(span, FormulaArithmetic.Minus, both[0], both[1]),
            BinaryExpressionType.Times => Product(span, FormulaArithmetic.Times, both[0], both[1]),
            BinaryExpressionType.Div => Product(span, FormulaArithmetic.Over, both[0], both[1]),
            BinaryExpressionType.Equal => Compare(span, FormulaComparison.Equal, both[0], both[1]),
            BinaryExpressionType.NotEqual => Compare(span, FormulaComparison.NotEqual, both[0], both[1]),
            BinaryExpressionType.Lesser => Compare(span, FormulaComparison.Below, both[0], both[1]),
            BinaryExpressionType.LesserOrEqual => Compare(span, FormulaComparison.NotAbove, both[0], both[1]),
            BinaryExpressionType.Greater => Compare(span, FormulaComparison.Above, both[0], both[1]),
            BinaryExpressionType.GreaterOrEqual => Compare(span, FormulaComparison.NotBelow, both[0], both[1]),
            _ => Strange(span),
        };
    }

    public FormulaNode Visit(Function expression) =>
        _calls.Check(FormulaGrammar.TokenOf(expression.Identifier.Name, _tokens), [.. expression.Parameters]);

    // The scanner and the shape let none of these through: if one comes, it is refused.
    public FormulaNode Visit(TernaryExpression expression) => Strange(default);

    public FormulaNode Visit(ValueExpression expression) => Strange(default);

    public FormulaNode Visit(LogicalExpressionList expression) => Strange(default);

    private FormulaNode Strange(FormulaSpan span) =>
        _notes.Report(span, FormulaFault.LeftOut, "this is no part of the language");

    private FormulaToken TokenOf(LogicalExpression quoted) =>
        FormulaGrammar.TokenOf(((Identifier)quoted).Name, _tokens);

    private bool IsQuoted(LogicalExpression tree) =>
        tree is Identifier leaf && FormulaGrammar.TokenOf(leaf.Name, _tokens).Kind == FormulaTokenKind.Quoted;

    private static bool Reads(FormulaToken quoted) => Quantity.TryParse(quoted.Text, out _);

    private FormulaNode Read(LogicalExpression tree, bool asText) =>
        asText && IsQuoted(tree)
            ? new FormulaNode.Constant(TokenOf(tree).Span, new FormulaValue.Word(TokenOf(tree).Text))
            : tree.Accept(this);

    private FormulaNode Leaf(FormulaToken token) =>
        token.Kind switch
        {
            FormulaTokenKind.Number or FormulaTokenKind.Quoted => Quantity.TryParse(token.Text, out Quantity quantity)
                ? new FormulaNode.Constant(token.Span, new FormulaValue.Amount(Exact.Of(quantity)))
                : _notes.Report(
                    token.Span,
                    FormulaFault.Kind,
                    $"'{token.Text}' is no quantity with a known unit, and is not compared with a text"
                ),
            FormulaTokenKind.Truth => new FormulaNode.Constant(token.Span, new FormulaValue.Truth(token.Text == "yes")),
            _ => Name(token),
        };

    private FormulaNode Name(FormulaToken token)
    {
        if (_names.TypeOf(token.Text) is { } type)
        {
            return new FormulaNode.Name(token.Span, token.Text, type);
        }

        IReadOnlyList<string> near = NearNames.Of(token.Text, _names.Known);
        string instead = near.Count == 0 ? "" : "; near to it: " + string.Join(", ", near.Select(name => $"[{name}]"));
        return _notes.Report(token.Span, FormulaFault.UnknownName, $"[{token.Text}] is not known here{instead}");
    }

    private FormulaNode Joint(BinaryExpression expression)
    {
        string word = expression.Type == BinaryExpressionType.And ? "and" : "or";
        FormulaNode left = expression.LeftExpression.Accept(this);
        FormulaNode right = expression.RightExpression.Accept(this);
        bool holds = true;
        foreach (FormulaNode side in (FormulaNode[])[left, right])
        {
            if (side.Type is not (null or FormulaType.OfTruth))
            {
                _notes.Wrong(side, FormulaType.YesNo, $"each side of '{word}'");
                holds = false;
            }
        }

        FormulaSpan span = left.Span.To(right.Span);
        return holds && left.Type is not null && right.Type is not null
            ? new FormulaNode.Joint(span, expression.Type == BinaryExpressionType.And, left, right)
            : new FormulaNode.Broken(span);
    }

    private FormulaNode Sum(FormulaSpan span, FormulaArithmetic sign, FormulaNode left, FormulaNode right)
    {
        bool plus = sign == FormulaArithmetic.Plus;
        string done = plus ? "added" : "subtracted";
        if (left.Type is not FormulaType.OfQuantity { Dimension: var first })
        {
            return NoQuantity(left, done);
        }

        if (right.Type is not FormulaType.OfQuantity { Dimension: var second })
        {
            return NoQuantity(right, done);
        }

        Dimension? gives = (first.IsTemperaturePoint, second.IsTemperaturePoint) switch
        {
            (false, false) => first == second ? first : null,
            (true, true) => plus ? null : Dimension.OfTemperatureDifference,
            (true, false) => second == Dimension.OfTemperatureDifference ? first : null,
            (false, true) => plus && first == Dimension.OfTemperatureDifference ? second : null,
        };
        return gives is { } dimension
            ? new FormulaNode.Arithmetic(span, FormulaType.Quantity(dimension), sign, left, right)
            : _notes.Unlike(left, right, span, done);
    }

    private FormulaNode Product(FormulaSpan span, FormulaArithmetic sign, FormulaNode left, FormulaNode right)
    {
        bool times = sign == FormulaArithmetic.Times;
        string done = times ? "multiplied" : "divided";
        if (left.Type is not FormulaType.OfQuantity { Dimension: var first })
        {
            return NoQuantity(left, done);
        }

        if (right.Type is not FormulaType.OfQuantity { Dimension: var second })
        {
            return NoQuantity(right, done);
        }

        return (times ? first.TryTimes(second, out Dimension gives) : first.TryOver(second, out gives))
            ? new FormulaNode.Arithmetic(span, FormulaType.Quantity(gives), sign, left, right)
            : _notes.Report(
                span,
                FormulaFault.Units,
                $"{_notes.IsA(left)} and {_notes.IsA(right)}: they can't be {done}"
            );
    }

    private FormulaNode NoQuantity(FormulaNode node, string done) =>
        _notes.Report(node.Span, FormulaFault.Kind, $"{_notes.IsA(node)}, which can't be {done}");

    private FormulaNode Compare(FormulaSpan span, FormulaComparison sign, FormulaNode left, FormulaNode right)
    {
        bool equality = sign is FormulaComparison.Equal or FormulaComparison.NotEqual;
        if (_notes.Chained(left, right))
        {
            return _notes.Report(
                span,
                FormulaFault.Kind,
                "one comparison runs into another: join two with 'and', or put one in parentheses"
            );
        }

        if (left.Type is FormulaType.OfQuantity && right.Type is FormulaType.OfQuantity)
        {
            return left.Type == right.Type
                ? new FormulaNode.Comparison(span, sign, left, right)
                : _notes.Unlike(left, right, span, "compared");
        }

        if (left.Type != right.Type)
        {
            return _notes.Report(
                span,
                FormulaFault.Kind,
                $"{_notes.IsA(left)} and {_notes.IsA(right)}: they can't be compared"
            );
        }

        return equality && left.Type is not FormulaType.OfList
            ? new FormulaNode.Comparison(span, sign, left, right)
            : _notes.Report(
                span,
                FormulaFault.Kind,
                left.Type is FormulaType.OfList
                    ? $"{_notes.IsA(left)}, which only a calculation of the shop takes"
                    : $"{_notes.IsA(left)}: it is equal to another or not, nothing between"
            );
    }
}
