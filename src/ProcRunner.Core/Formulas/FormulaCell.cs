using ProcRunner.Quantities;

namespace ProcRunner.Formulas;

/// <summary>
/// What a part of a formula gives while it is worked out: a <see cref="FormulaOutcome"/> in a form that takes no memory of its
/// own. The number is in base units; its dimension is the part's, which the checker proved.
/// </summary>
internal readonly struct FormulaCell
{
    private readonly object? _content;

    private FormulaCell(FormulaCellKind kind, Rational number, object? content)
    {
        Kind = kind;
        Number = number;
        _content = content;
    }

    public FormulaCellKind Kind { get; }

    /// <summary>The amount in base units; 0 for everything else.</summary>
    public Rational Number { get; }

    /// <summary>The text or the list.</summary>
    public FormulaValue? Value => _content as FormulaValue;

    /// <summary>The name that isn't known yet, or why there is no result.</summary>
    public string Words => _content as string ?? "";

    /// <summary>Whether there is a result.</summary>
    public bool IsKnown => Kind is not (FormulaCellKind.Missing or FormulaCellKind.Impossible);

    public static FormulaCell Of(Rational number) => new(FormulaCellKind.Amount, number, null);

    public static FormulaCell Of(bool holds) => new(holds ? FormulaCellKind.Yes : FormulaCellKind.No, default, null);

    public static FormulaCell Of(FormulaValue value) =>
        value switch
        {
            FormulaValue.Amount amount => Of(amount.Value.Value),
            FormulaValue.Truth truth => Of(truth.Holds),
            _ => new FormulaCell(FormulaCellKind.Value, default, value),
        };

    public static FormulaCell Of(FormulaNumber number) => number.Why is { } why ? Impossible(why) : Of(number.Value);

    public static FormulaCell Missing(string name) => new(FormulaCellKind.Missing, default, name);

    public static FormulaCell Impossible(string why) => new(FormulaCellKind.Impossible, default, why);

    /// <summary>The same for those outside, an amount with its dimension.</summary>
    public FormulaOutcome ToOutcome(Dimension dimension) =>
        Kind switch
        {
            FormulaCellKind.Amount => new FormulaOutcome.Known(new FormulaValue.Amount(new Exact(Number, dimension))),
            FormulaCellKind.Yes or FormulaCellKind.No => new FormulaOutcome.Known(
                new FormulaValue.Truth(Kind == FormulaCellKind.Yes)
            ),
            FormulaCellKind.Value => new FormulaOutcome.Known(Value!),
            FormulaCellKind.Missing => new FormulaOutcome.Missing(Words),
            _ => new FormulaOutcome.Impossible(Words),
        };
}
