using NCalc;
using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Formulas;

/// <summary>Proves the values of a call of one of the shop's calculations, each given by name.</summary>
internal sealed class FormulaWorkCheck(
    FormulaChecker checker,
    FormulaCheckNotes notes,
    FormulaToken token,
    WorkFunction function,
    WorkGives gives
)
{
    private readonly List<FormulaWorkCall.Argument> _arguments = [];
    private readonly List<FormulaNode> _values = [];
    private FormulaSpan _span = token.Span;
    private FormulaNode? _alike;
    private bool _holds = true;

    /// <summary>The call as a node of the result's type; broken, with all problems of its values reported, if it does not hold.</summary>
    public FormulaNode Check(IReadOnlyList<LogicalExpression> trees)
    {
        int at = 0;
        while (at < trees.Count)
        {
            if (checker.Label(trees[at]) is not { } label)
            {
                FormulaNode value = checker.Together([trees[at]])[0];
                string first = function.Parameters[0].Name;
                Report(value.Span, $"{function.Name} takes its values by name, as in {function.Name}({first}: ...)");
                break;
            }

            int end = at + 1;
            while (end < trees.Count && checker.Label(trees[end]) is null)
            {
                end++;
            }

            Argument(label, [.. trees.Skip(at + 1).Take(end - at - 1)]);
            at = end;
        }

        foreach (WorkParameter missing in function.Parameters.Where(IsMissing))
        {
            Report(token.Span, $"{function.Name} needs {missing.Name}: {missing.Takes}, {missing.Summary}");
            break;
        }

        return _holds
            ? new FormulaNode.Work(_span, Type(), new FormulaWorkCall(function, gives, _arguments), _values)
            : new FormulaNode.Broken(_span);
    }

    private bool IsMissing(WorkParameter parameter) =>
        _holds && !parameter.IsOptional && _arguments.All(one => one.Parameter != parameter);

    private void Argument(FormulaToken label, IReadOnlyList<LogicalExpression> trees)
    {
        if (function.Parameters.FirstOrDefault(one => one.Name == label.Text) is not { } parameter)
        {
            string all = string.Join(", ", function.Parameters.Select(one => one.Name));
            Report(label.Span, $"{function.Name} has no {label.Text}; it takes {all}");
            return;
        }

        if (_arguments.Any(one => one.Parameter == parameter))
        {
            Report(label.Span, $"{label.Text} is given twice");
            return;
        }

        if (parameter.Takes is WorkTakes.Word word)
        {
            Word(parameter, word, label, trees);
            return;
        }

        int most = parameter.Takes switch
        {
            WorkTakes.Amounts => int.MaxValue,
            WorkTakes.Alike alike => alike.Most,
            _ => 1,
        };
        if (trees.Count > most)
        {
            Report(label.Span, $"{label.Text} of {function.Name} takes one value");
            return;
        }

        FormulaNode[] nodes = [.. trees.Select(tree => checker.Together([tree])[0])];
        foreach (FormulaNode node in nodes)
        {
            _span = _span.To(node.Span);
            _holds &= Takes(parameter, node, most > 1);
        }

        _values.AddRange(nodes);
        _arguments.Add(new FormulaWorkCall.Argument(parameter, [.. nodes.Select(DimensionOf)], ""));
    }

    private void Word(
        WorkParameter parameter,
        WorkTakes.Word word,
        FormulaToken label,
        IReadOnlyList<LogicalExpression> trees
    )
    {
        if (trees.Count == 1 && checker.Quoted(trees[0]) is { } quoted && word.Choices.Contains(quoted.Text))
        {
            _span = _span.To(quoted.Span);
            _arguments.Add(new FormulaWorkCall.Argument(parameter, [], quoted.Text));
            return;
        }

        string all = string.Join(", ", word.Choices.Select(choice => $"'{choice}'"));
        Report(label.Span, $"{label.Text} of {function.Name} is one of {all}, written in the formula");
    }

    private bool Takes(WorkParameter parameter, FormulaNode node, bool several)
    {
        string where = $"{parameter.Name} of {function.Name}";
        if (node.Type is null)
        {
            return false;
        }

        if (node.Type is FormulaType.OfList && !several)
        {
            return Refuse(node, FormulaFault.Kind, $"{notes.IsA(node)}, but {where} takes one value");
        }

        if (node.Type is not (FormulaType.OfList or FormulaType.OfQuantity))
        {
            return Refuse(node, FormulaFault.Kind, $"{notes.IsA(node)}, but {where} is a quantity");
        }

        Unit? usual = (parameter.Takes as WorkTakes.Amount)?.Unit ?? (parameter.Takes as WorkTakes.Amounts)?.Unit;
        return usual is null ? IsAlike(node) : Is(node, usual.Dimension, where);
    }

    private bool Is(FormulaNode node, Dimension needed, string where)
    {
        if (DimensionOf(node) == needed)
        {
            return true;
        }

        notes.Wrong(node, FormulaType.Quantity(needed), where);
        return false;
    }

    private bool IsAlike(FormulaNode node)
    {
        Dimension dimension = DimensionOf(node);
        if (dimension.IsTemperaturePoint || Units.All.All(unit => unit.Dimension != dimension))
        {
            string why = $"{notes.IsA(node)}: {function.Name} takes amounts that have a unit of their own";
            return Refuse(node, FormulaFault.Units, why);
        }

        _alike ??= node;
        if (DimensionOf(_alike) == dimension)
        {
            return true;
        }

        notes.Unlike(_alike, node, node.Span, $"taken together by {function.Name}");
        return false;
    }

    private FormulaType Type() =>
        gives switch
        {
            WorkGives.Amount amount => FormulaType.Quantity(amount.Dimension),
            WorkGives.OfAlike => FormulaType.Quantity(_alike is null ? Dimension.None : DimensionOf(_alike)),
            _ => FormulaType.Text,
        };

    private static Dimension DimensionOf(FormulaNode node) =>
        node.Type switch
        {
            FormulaType.OfQuantity one => one.Dimension,
            FormulaType.OfList several => several.Dimension,
            _ => Dimension.None,
        };

    private bool Refuse(FormulaNode node, FormulaFault fault, string message)
    {
        notes.Report(node.Span, fault, message);
        return false;
    }

    private void Report(FormulaSpan span, string message)
    {
        notes.Report(span, FormulaFault.Arguments, message);
        _holds = false;
    }
}
