using ProcRunner.Formulas;
using ProcRunner.Quantities;

namespace ProcRunner.Core.Tests.Formulas;

/// <summary>Names and values for formulas under test, as one object: what is entered decides the type.</summary>
internal sealed class Bench : IFormulaNames, IFormulaScope
{
    private readonly Dictionary<string, FormulaType> _types = new(StringComparer.Ordinal);
    private readonly Dictionary<string, FormulaValue> _values = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _texts = new(StringComparer.Ordinal);

    /// <summary>A bench with nothing on it.</summary>
    public static Bench Empty => new();

    public IEnumerable<string> Known => _types.Keys;

    /// <summary>A quantity such as <c>0.052 in</c>.</summary>
    public Bench With(string name, string quantity)
    {
        Assert.True(Quantity.TryParse(quantity, out Quantity read), quantity);
        _texts[name] = quantity;
        return With(name, new FormulaValue.Amount(Exact.Of(read)));
    }

    public Bench With(string name, FormulaValue value)
    {
        _types[name] = value.Type;
        _values[name] = value;
        return this;
    }

    /// <summary>A name of a type that has no value yet.</summary>
    public Bench Waiting(string name, FormulaType type)
    {
        _types[name] = type;
        return this;
    }

    /// <summary>A value of another type than the one promised.</summary>
    public Bench Lying(string name, FormulaType promised, FormulaValue value)
    {
        _types[name] = promised;
        _values[name] = value;
        return this;
    }

    public FormulaType? TypeOf(string name) => _types.GetValueOrDefault(name);

    public FormulaValue? ValueOf(string name) => _values.GetValueOrDefault(name);

    public string? TextOf(string name) => _texts.GetValueOrDefault(name);

    public Formula Compiled(string text, FormulaType? wanted = null)
    {
        FormulaResult result = FormulaCompiler.Compile(text, this, wanted);
        string problems = result is FormulaResult.Refused refused ? string.Join("; ", refused.Problems) : "";
        return Assert.IsType<FormulaResult.Compiled>(result, exactMatch: true) is { } compiled && problems.Length == 0
            ? compiled.Formula
            : throw new InvalidOperationException(problems);
    }

    public IReadOnlyList<FormulaProblem> Problems(string text, FormulaType? wanted = null) =>
        Assert.IsType<FormulaResult.Refused>(FormulaCompiler.Compile(text, this, wanted)).Problems;

    public FormulaOutcome Outcome(string text) => Compiled(text).Evaluate(this);

    public FormulaValue Value(string text) => Assert.IsType<FormulaOutcome.Known>(Outcome(text)).Value;

    public Exact Amount(string text) => Assert.IsType<FormulaValue.Amount>(Value(text)).Value;

    public bool Truth(string text) => Assert.IsType<FormulaValue.Truth>(Value(text)).Holds;

    /// <summary>Holds that a formula gives a quantity or truth, rounded to the places that the expectation shows.</summary>
    public void Gives(string expected, string text)
    {
        if (Value(text) is FormulaValue.Truth truth)
        {
            Assert.Equal(expected, truth.Holds ? "yes" : "no");
            return;
        }

        Assert.True(Quantity.TryParse(expected, out Quantity quantity), expected);
        Assert.True(
            Amount(text).TryToQuantity(quantity.Unit, quantity.Value.Scale, Rounding.Nearest, out Quantity rounded),
            $"{text} is no {quantity.Dimension}"
        );
        Assert.Equal(expected, rounded.ToString());
    }

    /// <summary>Holds that a formula gives exactly a quantity, nothing rounded.</summary>
    public void GivesExactly(string expected, string text)
    {
        Assert.True(Quantity.TryParse(expected, out Quantity quantity), expected);
        Assert.Equal(Exact.Of(quantity), Amount(text));
    }
}
