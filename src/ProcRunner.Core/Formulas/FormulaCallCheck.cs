using System.Globalization;
using NCalc;
using ProcRunner.Quantities;

namespace ProcRunner.Formulas;

/// <summary>Proves a function's values against its record and works out the type of what it gives.</summary>
internal sealed class FormulaCallCheck(FormulaChecker checker, FormulaCheckNotes notes)
{
    /// <summary>The call as a node of its own type; broken, with all problems of its values reported, if it does not hold.</summary>
    public FormulaNode Check(FormulaToken token, IReadOnlyList<LogicalExpression> trees)
    {
        if (FormulaWorkNames.Find(token.Text) is { } work)
        {
            return new FormulaWorkCheck(checker, notes, token, work.Function, work.Gives).Check(trees);
        }

        if (
            trees.Select(checker.Label).FirstOrDefault(label => label is not null) is { } named
            && Find(token) is { } known
        )
        {
            return notes.Report(
                named.Span,
                FormulaFault.Arguments,
                $"{known.Name} takes its values in order, without names"
            );
        }

        if (Find(token) is not { } function)
        {
            foreach (LogicalExpression tree in trees.Where(tree => checker.Label(tree) is null))
            {
                checker.Together([tree]);
            }

            return new FormulaNode.Broken(token.Span);
        }

        if (!function.TakesCount(trees.Count))
        {
            string names = string.Join(", ", function.Parameters.Select(one => one.Name));
            string count = trees.Count.ToString(CultureInfo.InvariantCulture);
            string more = function.Repeats ? " (one or more)" : "";
            return notes.Report(
                token.Span,
                FormulaFault.Arguments,
                $"{function.Name} takes {names}{more}, not {count} values"
            );
        }

        FormulaNode[] values = Values(function, trees);
        FormulaSpan span = values.Aggregate(token.Span, (all, value) => all.To(value.Span));
        bool hold = true;
        for (int i = 0; i < values.Length; i++)
        {
            hold &= Takes(function, i, values);
        }

        return hold && Gives(function, values, token) is { } type
            ? new FormulaNode.Call(span, type, function, values)
            : new FormulaNode.Broken(span);
    }

    /// <summary>The function that a token names; null, and reported, if there is none.</summary>
    public FormulaFunction? Find(FormulaToken token)
    {
        if (FormulaFunctions.Find(token.Text) is { } function)
        {
            return function;
        }

        if (FormulaWorkNames.Refusal(token.Text) is { } refusal)
        {
            notes.Report(token.Span, FormulaFault.UnknownFunction, refusal);
            return null;
        }

        IReadOnlyList<string> near = NearNames.Of(
            token.Text,
            FormulaFunctions.All.Select(one => one.Name).Concat(FormulaWorkNames.All)
        );
        string instead = near.Count == 0 ? "" : "; near to it: " + string.Join(", ", near);
        notes.Report(token.Span, FormulaFault.UnknownFunction, $"there is no function {token.Text}{instead}");
        return null;
    }

    // Values whose types hang together are read together, so that a quoted one beside a text is a text.
    private FormulaNode[] Values(FormulaFunction function, IReadOnlyList<LogicalExpression> trees)
    {
        FormulaNode[] values = new FormulaNode[trees.Count];
        foreach (
            IGrouping<bool, int> group in Enumerable
                .Range(0, trees.Count)
                .GroupBy(i => function.ParameterAt(i).Takes is FormulaTakes.SameType)
        )
        {
            int[] places = [.. group];
            FormulaNode[][] read = group.Key
                ? [checker.Together([.. places.Select(i => trees[i])])]
                : [.. places.Select(i => checker.Together([trees[i]]))];
            foreach ((int place, FormulaNode node) in places.Zip(read.SelectMany(nodes => nodes)))
            {
                values[place] = node;
            }
        }

        return values;
    }

    private bool Takes(FormulaFunction function, int index, FormulaNode[] values)
    {
        FormulaNode value = values[index];
        FormulaParameter parameter = function.ParameterAt(index);
        string where = $"{parameter.Name} of {function.Name}";
        return (parameter.Takes, value.Type) switch
        {
            (_, null) => false,
            (FormulaTakes.A a, _) => Is(value, FormulaType.Quantity(a.Dimension), where),
            (FormulaTakes.Condition, _) => Is(value, FormulaType.YesNo, where),
            (FormulaTakes.SameType, _) => LikeFirst(function, index, values),
            (FormulaTakes.WrittenWhole whole, _) => IsWhole(value, whole, where),
            (_, not FormulaType.OfQuantity) => Says(value, FormulaFault.Kind, $"{where} is a quantity"),
            (FormulaTakes.AnyQuantity or FormulaTakes.Alike { OnScale: false }, FormulaType.OfQuantity of)
                when of.Dimension.IsTemperaturePoint => Says(
                value,
                FormulaFault.Units,
                $"a place on a scale is no amount that {function.Name} can take"
            ),
            (FormulaTakes.Alike, _) => LikeFirst(function, index, values),
            _ => true,
        };
    }

    private bool Is(FormulaNode value, FormulaType needed, string where)
    {
        if (value.Type == needed)
        {
            return true;
        }

        notes.Wrong(value, needed, where);
        return false;
    }

    private bool Says(FormulaNode value, FormulaFault fault, string but)
    {
        notes.Report(value.Span, fault, $"{notes.IsA(value)}, but {but}");
        return false;
    }

    private bool IsWhole(FormulaNode value, FormulaTakes.WrittenWhole whole, string where)
    {
        if (Written(value) is { } number && number >= whole.Least && number <= whole.Most)
        {
            return true;
        }

        notes.Report(value.Span, FormulaFault.Arguments, $"{where} is a {whole} that stands in the formula");
        return false;
    }

    private bool LikeFirst(FormulaFunction function, int index, FormulaNode[] values)
    {
        FormulaNode? first = values
            .Take(index)
            .Where((_, i) => function.ParameterAt(i).Takes == function.ParameterAt(index).Takes)
            .FirstOrDefault(value => value.Type is not null);
        if (first is null || first.Type == values[index].Type)
        {
            return true;
        }

        FormulaSpan span = values[index].Span;
        if (first.Type is FormulaType.OfQuantity && values[index].Type is FormulaType.OfQuantity)
        {
            notes.Unlike(first, values[index], span, $"taken together by {function.Name}");
        }
        else
        {
            string both = $"{notes.IsA(first)} and {notes.IsA(values[index])}";
            notes.Report(span, FormulaFault.Kind, $"{both}: {function.Name} takes one type only");
        }

        return false;
    }

    private FormulaType? Gives(FormulaFunction function, FormulaNode[] values, FormulaToken token)
    {
        Dimension first = values[0].Type is FormulaType.OfQuantity of ? of.Dimension : Dimension.None;
        return function.Gives switch
        {
            FormulaGives.A a => FormulaType.Quantity(a.Dimension),
            FormulaGives.YesNo => FormulaType.YesNo,
            FormulaGives.Difference => FormulaType.Quantity(
                first.IsTemperaturePoint ? Dimension.OfTemperatureDifference : first
            ),
            FormulaGives.Power => first.TryPower(Written(values[1]) ?? 0, out Dimension power)
                ? FormulaType.Quantity(power)
                : Refuse(token, values[0], "has no such power"),
            FormulaGives.Root => Half(first) is { } half
                ? FormulaType.Quantity(half)
                : Refuse(token, values[0], "is no square of a unit, so it has no root"),
            _ => values[^1].Type,
        };
    }

    private FormulaType? Refuse(FormulaToken token, FormulaNode value, string why)
    {
        notes.Report(token.Span, FormulaFault.Units, $"{notes.IsA(value)}, which {why}");
        return null;
    }

    private static int? Written(FormulaNode value) =>
        value switch
        {
            FormulaNode.Negative negative => -Written(negative.Of),
            FormulaNode.Constant
            {
                Value: FormulaValue.Amount { Value: { Dimension: var dimension, Value: var number } }
            }
                when dimension == Dimension.None
                    && number.Denominator.IsOne
                    && number.Abs() <= Rational.FromInteger(1000) => (int)number.Numerator,
            _ => null,
        };

    private static Dimension? Half(Dimension square)
    {
        sbyte[] exponents = [square.Length, square.Mass, square.Time, square.Temperature, square.Angle];
        return exponents.All(exponent => exponent % 2 == 0)
            ? new Dimension(
                (sbyte)(square.Length / 2),
                (sbyte)(square.Mass / 2),
                (sbyte)(square.Time / 2),
                (sbyte)(square.Temperature / 2),
                (sbyte)(square.Angle / 2),
                IsTemperaturePoint: false
            )
            : null;
    }
}
