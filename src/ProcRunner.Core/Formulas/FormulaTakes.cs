using ProcRunner.Quantities;

namespace ProcRunner.Formulas;

/// <summary>What a function's parameter takes.</summary>
public abstract record FormulaTakes
{
    private FormulaTakes() { }

    /// <summary>A quantity of one dimension.</summary>
    /// <param name="Dimension">What is measured.</param>
    public sealed record A(Dimension Dimension) : FormulaTakes
    {
        /// <summary>The dimension in words.</summary>
        public override string ToString() => Dimension.ToString();
    }

    /// <summary>Any quantity, of the same dimension as the function's other parameters of this kind.</summary>
    /// <param name="OnScale">Whether a place on a temperature scale will do.</param>
    public sealed record Alike(bool OnScale) : FormulaTakes
    {
        /// <summary><c>quantity</c>.</summary>
        public override string ToString() => "quantity";
    }

    /// <summary>Any quantity at all, except a place on a temperature scale.</summary>
    public sealed record AnyQuantity : FormulaTakes
    {
        /// <summary><c>any quantity</c>.</summary>
        public override string ToString() => "any quantity";
    }

    /// <summary>A whole number that stands in the formula.</summary>
    /// <param name="Least">The smallest allowed.</param>
    /// <param name="Most">The largest allowed.</param>
    public sealed record WrittenWhole(int Least, int Most) : FormulaTakes
    {
        /// <summary>The number with its range.</summary>
        public override string ToString() => FormattableString.Invariant($"whole number {Least} to {Most}");
    }

    /// <summary>Yes or no.</summary>
    public sealed record Condition : FormulaTakes
    {
        /// <summary><c>yes or no</c>.</summary>
        public override string ToString() => "yes or no";
    }

    /// <summary>A value of any type, the same type as the function's other parameters of this kind.</summary>
    public sealed record SameType : FormulaTakes
    {
        /// <summary><c>value</c>.</summary>
        public override string ToString() => "value";
    }
}
