using System.Text;
using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>
/// Collects the steps and results of one <see cref="WorkFunction"/>. A formula is written with names in braces,
/// <c>{part-smallest} - {hole-largest}</c>, which are arguments or earlier steps (spaces as hyphens); the line with numbers
/// fills them in.
/// </summary>
internal sealed class Working
{
    private readonly WorkArguments _arguments;
    private readonly Dictionary<string, string> _known;
    private readonly List<WorkStep> _steps = [];
    private readonly List<WorkFigure> _results = [];
    private ShopFault? _fault;

    public Working(WorkArguments arguments)
    {
        _arguments = arguments;
        _known = new Dictionary<string, string>(arguments.Texts, StringComparer.Ordinal);
    }

    /// <summary>The answer of a calculation of one step with one result, or its fault.</summary>
    public static ShopResult<WorkAnswer> OneStep(
        WorkArguments arguments,
        ShopResult<Exact> result,
        string name,
        string formula,
        Unit metric,
        Unit inch,
        Rounding rounding = Rounding.Nearest
    ) =>
        result.Then(found =>
        {
            Working working = new(arguments);
            working.Step(name, formula, found, metric, inch, rounding: rounding);
            return working.Done();
        });

    /// <summary>Makes a value known to later formulas without a step, such as one looked up.</summary>
    public void Know(string name, string text) => _known[name] = text;

    /// <summary>A step whose result is an amount, shown in the metric or the inch unit as the arguments are.</summary>
    /// <param name="name">What is worked out, in words.</param>
    /// <param name="formula">With names in braces.</param>
    /// <param name="amount">The result.</param>
    /// <param name="metric">Its unit when lengths were given in metric units.</param>
    /// <param name="inch">Its unit when lengths were given in inches.</param>
    /// <param name="isResult">Whether it is one of the answer's results.</param>
    /// <param name="rounding">Which way digits are cut: down for what may be used up, up for what is needed.</param>
    public void Step(
        string name,
        string formula,
        Exact amount,
        Unit metric,
        Unit inch,
        bool isResult = true,
        Rounding rounding = Rounding.Nearest
    )
    {
        Unit unit = _arguments.IsInch ? inch : metric;
        if (WorkFigure.Of(name, amount, unit, _arguments.PlacesIn(unit), rounding) is { } figure)
        {
            Add(figure, formula, isResult);
        }
        else
        {
            _fault ??= OutOfSize(name);
        }
    }

    /// <summary>As the other, for a double in a metric unit; one that is not finite is a fault of the whole answer.</summary>
    public void Step(
        string name,
        string formula,
        double value,
        Unit metric,
        Unit inch,
        bool isResult = true,
        Rounding rounding = Rounding.Nearest
    )
    {
        if (TwelveDigits.TryRound(value, out Rational rounded))
        {
            Step(name, formula, new Exact(metric.ToBase(rounded), metric.Dimension), metric, inch, isResult, rounding);
        }
        else
        {
            _fault ??= OutOfSize(name);
        }
    }

    /// <summary>A step whose result is words.</summary>
    public void Say(string name, string formula, string words, bool isResult = true) =>
        Add(WorkFigure.OfWords(name, words), formula, isResult);

    /// <summary>The answer, or the first fault met.</summary>
    public ShopResult<WorkAnswer> Done() => _fault is null ? new WorkAnswer(_results, _steps) : _fault;

    private ShopFault OutOfSize(string name) =>
        new(
            string.Join(" and ", _arguments.Texts.Keys),
            string.Join(" and ", _arguments.Texts.Values),
            $"the {name} comes out past any size of the shop"
        );

    private void Add(WorkFigure figure, string formula, bool isResult)
    {
        _steps.Add(
            new WorkStep(figure.Name, Fill(formula, one => one.Replace('-', ' ')), Fill(formula, Number), figure.Text)
        );
        _known[figure.Name.Replace(' ', '-')] = figure.Text;
        if (isResult)
        {
            _results.Add(figure);
        }
    }

    private string Number(string name) => _known.GetValueOrDefault(name) ?? name.Replace('-', ' ');

    // A sum, a negative number after a sign, and a number with a unit under a power stand in brackets.
    private static string Bracketed(string number, string before, string after) =>
        number.Contains(" + ", StringComparison.Ordinal)
        || (number.StartsWith('-') && before.TrimEnd() is [.., '-' or '+' or 'x' or '/'])
        || (number.Contains(' ', StringComparison.Ordinal) && after is ['\u00B2' or '\u00B3' or '^', ..])
            ? $"({number})"
            : number;

    private static string Fill(string formula, Func<string, string> text)
    {
        StringBuilder filled = new();
        int at = 0;
        while (formula.IndexOf('{', at) is var open and >= 0 && formula.IndexOf('}', open) is var close and >= 0)
        {
            string before = formula[at..open];
            at = close + 1;
            filled.Append(before).Append(Bracketed(text(formula[(open + 1)..close]), before, formula[at..]));
        }

        return filled.Append(formula, at, formula.Length - at).ToString();
    }
}
