using ProcRunner.Quantities;

namespace ProcRunner.Formulas;

/// <summary>What a formula, or a part of one, gives: a quantity of one dimension, yes or no, or a text.</summary>
/// <remarks>Equal when the family and the dimension are equal.</remarks>
public abstract record FormulaType
{
    private FormulaType() { }

    /// <summary>Yes or no.</summary>
    public static FormulaType YesNo { get; } = new OfTruth();

    /// <summary>A text, which compares with a text and does nothing else.</summary>
    public static FormulaType Text { get; } = new OfWord();

    /// <summary>A number without a unit.</summary>
    public static FormulaType Number { get; } = new OfQuantity(Dimension.None);

    /// <summary>A quantity of a dimension.</summary>
    public static FormulaType Quantity(Dimension dimension) => new OfQuantity(dimension);

    /// <summary>A quantity of <see cref="Dimension"/>.</summary>
    /// <param name="Dimension">What is measured.</param>
    public sealed record OfQuantity(Dimension Dimension) : FormulaType
    {
        /// <summary>The dimension in words: <c>length</c>, <c>pure number</c>.</summary>
        public override string ToString() => Dimension.ToString();
    }

    /// <summary>Several quantities of one dimension, in order, which only a calculation of the shop takes.</summary>
    /// <param name="Dimension">What is measured.</param>
    public sealed record OfList(Dimension Dimension) : FormulaType
    {
        /// <summary><c>list (length)</c>.</summary>
        public override string ToString() => $"list ({Dimension})";
    }

    /// <summary>Yes or no.</summary>
    public sealed record OfTruth : FormulaType
    {
        /// <summary><c>yes or no</c>.</summary>
        public override string ToString() => "yes or no";
    }

    /// <summary>A text.</summary>
    public sealed record OfWord : FormulaType
    {
        /// <summary><c>text</c>.</summary>
        public override string ToString() => "text";
    }
}
