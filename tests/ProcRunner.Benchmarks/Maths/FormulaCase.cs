using ProcRunner.Formulas;
using ProcRunner.Quantities;

namespace ProcRunner.Benchmarks.Maths;

/// <summary>A formula, what it reads, and the same arithmetic written by hand on ratios of big integers.</summary>
/// <param name="Text">The formula.</param>
/// <param name="Inputs">Name and quantity or text of each value it reads.</param>
/// <param name="ByHand">The same on big integers, the values in the order of <paramref name="Inputs"/>; null for none.</param>
internal sealed record FormulaCase(
    string Text,
    (string Name, string Value)[] Inputs,
    Func<BigRatio[], bool>? ByHand = null
) : IFormulaNames, IFormulaScope
{
    private readonly Dictionary<string, FormulaValue> _values = Inputs.ToDictionary(
        one => one.Name,
        one =>
            Quantity.TryParse(one.Value, out Quantity quantity)
                ? (FormulaValue)new FormulaValue.Amount(Exact.Of(quantity))
                : new FormulaValue.Word(one.Value),
        StringComparer.Ordinal
    );

    public IEnumerable<string> Known => _values.Keys;

    /// <summary>The values as ratios of big integers; 0 for a text.</summary>
    public BigRatio[] Ratios =>
        [
            .. Inputs.Select(one =>
                _values[one.Name] is FormulaValue.Amount amount
                    ? new BigRatio(amount.Value.Value.Numerator, amount.Value.Value.Denominator)
                    : new BigRatio(0, 1)
            ),
        ];

    public Formula Compile() =>
        FormulaCompiler.Compile(Text, this, null) is FormulaResult.Compiled compiled
            ? compiled.Formula
            : throw new InvalidOperationException(Text);

    public FormulaType? TypeOf(string name) => _values.GetValueOrDefault(name)?.Type;

    public FormulaValue? ValueOf(string name) => _values.GetValueOrDefault(name);

    public string? TextOf(string name) => null;
}
