using ProcRunner.Quantities;

namespace ProcRunner.Formulas;

/// <summary>A value that a formula reads or gives.</summary>
public abstract record FormulaValue
{
    private FormulaValue() { }

    /// <summary>What kind of value this is.</summary>
    public abstract FormulaType Type { get; }

    /// <summary>A quantity, exact, in base units.</summary>
    /// <param name="Value">The amount and its dimension.</param>
    public sealed record Amount(Exact Value) : FormulaValue
    {
        /// <inheritdoc/>
        public override FormulaType Type => FormulaType.Quantity(Value.Dimension);
    }

    /// <summary>Several quantities of one dimension, in order.</summary>
    /// <param name="Values">The amounts; at least one.</param>
    public sealed record Many(IReadOnlyList<Exact> Values) : FormulaValue
    {
        /// <inheritdoc/>
        public override FormulaType Type => new FormulaType.OfList(Values[0].Dimension);
    }

    /// <summary>Yes or no.</summary>
    /// <param name="Holds">True for yes.</param>
    public sealed record Truth(bool Holds) : FormulaValue
    {
        /// <inheritdoc/>
        public override FormulaType Type => FormulaType.YesNo;
    }

    /// <summary>A text; compared letter by letter, capitals count.</summary>
    /// <param name="Text">The text.</param>
    public sealed record Word(string Text) : FormulaValue
    {
        /// <inheritdoc/>
        public override FormulaType Type => FormulaType.Text;
    }
}
