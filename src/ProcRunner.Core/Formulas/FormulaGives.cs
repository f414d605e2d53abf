using ProcRunner.Quantities;

namespace ProcRunner.Formulas;

/// <summary>What a function gives.</summary>
public abstract record FormulaGives
{
    private FormulaGives() { }

    /// <summary>A quantity of one dimension.</summary>
    /// <param name="Dimension">What is measured.</param>
    public sealed record A(Dimension Dimension) : FormulaGives
    {
        /// <summary>The dimension in words.</summary>
        public override string ToString() => Dimension.ToString();
    }

    /// <summary>Yes or no.</summary>
    public sealed record YesNo : FormulaGives
    {
        /// <summary><c>yes or no</c>.</summary>
        public override string ToString() => "yes or no";
    }

    /// <summary>The type of the last value.</summary>
    public sealed record LikeLast : FormulaGives
    {
        /// <summary><c>the same</c>.</summary>
        public override string ToString() => "the same";
    }

    /// <summary>The dimension of the first value; two places on a temperature scale lie a temperature difference apart.</summary>
    public sealed record Difference : FormulaGives
    {
        /// <summary><c>difference of two</c>.</summary>
        public override string ToString() => "difference of two";
    }

    /// <summary>The first value's dimension to the power of the second, which stands in the formula.</summary>
    public sealed record Power : FormulaGives
    {
        /// <summary><c>power of its unit</c>.</summary>
        public override string ToString() => "power of its unit";
    }

    /// <summary>Half the exponents of the first value's dimension.</summary>
    public sealed record Root : FormulaGives
    {
        /// <summary><c>root of its unit</c>.</summary>
        public override string ToString() => "root of its unit";
    }
}
