using ProcRunner.Quantities;

namespace ProcRunner.Formulas;

/// <summary>A formula whose names are known and whose units balance, ready to be worked out any number of times.</summary>
/// <remarks>
/// How the parts follow one another: <c>FormulaScanner</c> cuts the text into tokens, <c>FormulaShape</c> holds that they
/// take turns, <c>FormulaGrammar</c> has the tree built, <c>FormulaChecker</c> proves types and units, <c>FormulaClosures</c>
/// compiles. <see cref="FormulaFunctions"/> is the table that all of them and the help read. Immutable.
/// </remarks>
public sealed class Formula
{
    private readonly IReadOnlyList<FormulaToken> _tokens;
    private readonly FormulaClosure _work;
    private readonly Dimension _dimension;

    internal Formula(
        string text,
        IReadOnlyList<FormulaToken> tokens,
        FormulaNode root,
        FormulaType type,
        FormulaClosure work
    )
    {
        Text = text;
        Type = type;
        Root = root;
        _tokens = tokens;
        _work = work;
        _dimension = type is FormulaType.OfQuantity quantity ? quantity.Dimension : Dimension.None;
        Names =
        [
            .. tokens
                .Where(token => token.Kind == FormulaTokenKind.Name)
                .Select(token => token.Text)
                .Distinct(StringComparer.Ordinal),
        ];
    }

    /// <summary>The text as it was written.</summary>
    public string Text { get; }

    /// <summary>Its proven tree, for checks that ask what a condition can come to.</summary>
    internal FormulaNode Root { get; }

    /// <summary>What it gives.</summary>
    public FormulaType Type { get; }

    /// <summary>Every name it reads, without brackets, in the order of the text, each once.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>Works it out, exactly, in base units. Never throws, unless the scope does.</summary>
    public FormulaOutcome Evaluate(IFormulaScope scope) => _work(scope).ToOutcome(_dimension);

    /// <summary>
    /// The amount, as <see cref="Evaluate"/> gives it, without an object made for it; false where there is none, and
    /// <see cref="Evaluate"/> says why.
    /// </summary>
    public bool TryAmount(IFormulaScope scope, out Exact amount)
    {
        FormulaCell found = _work(scope);
        amount = new Exact(found.Number, _dimension);
        return found.Kind == FormulaCellKind.Amount;
    }

    /// <summary>The yes or no, as <see cref="Evaluate"/> gives it, without an object made for it; null where there is none.</summary>
    public bool? Holds(IFormulaScope scope) =>
        _work(scope).Kind switch
        {
            FormulaCellKind.Yes => true,
            FormulaCellKind.No => false,
            _ => null,
        };

    /// <summary>
    /// The formula with its numbers filled in, and what comes of them: <c>0.0520 - 0.0230 = 0.0290</c>. For reading only:
    /// amounts are rounded to what is shown.
    /// </summary>
    /// <param name="scope">The values; a name without one shows as <c>?</c>.</param>
    /// <param name="displayUnit">Amounts of its dimension are shown in it, without its symbol; others as entered.</param>
    /// <param name="digits">After the point, 0 to 28.</param>
    public string Working(IFormulaScope scope, Unit displayUnit, int digits) =>
        TryAmount(scope, out Exact amount)
            ? Working(scope, displayUnit, digits, amount)
            : new FormulaWorking(scope, displayUnit, digits).Show(Text, _tokens, Evaluate(scope));

    /// <summary>The same for an amount that <see cref="TryAmount"/> has found in the scope.</summary>
    internal string Working(IFormulaScope scope, Unit displayUnit, int digits, Exact amount) =>
        new FormulaWorking(scope, displayUnit, digits).Show(Text, _tokens, amount);

    /// <summary>The text as it was written.</summary>
    public override string ToString() => Text;
}
