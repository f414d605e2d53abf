namespace ProcRunner.Quantities;

/// <summary>An amount in the base unit of its dimension, with nothing rounded; what formulas work on.</summary>
/// <param name="Value">In base units (mm, kg, s, K, deg and what follows from them).</param>
/// <param name="Dimension">What is measured.</param>
public readonly record struct Exact(Rational Value, Dimension Dimension) : IComparable<Exact>
{
    /// <summary>The amount of a quantity.</summary>
    public static Exact Of(Quantity quantity) => new(quantity.Unit.ToBase(quantity.Value), quantity.Unit.Dimension);

    /// <summary>The amount in a unit, exactly.</summary>
    /// <exception cref="ArgumentException">The unit measures something else.</exception>
    public Rational In(Unit unit)
    {
        RequireSame(unit.Dimension, nameof(unit));
        return unit.FromBase(Value);
    }

    /// <summary>The amount as a quantity of a unit, rounded; false if the unit measures something else or it won't fit.</summary>
    /// <param name="unit">The unit wanted.</param>
    /// <param name="digits">After the point, 0 to 28.</param>
    /// <param name="mode">Which way to round.</param>
    /// <param name="quantity">The result.</param>
    public bool TryToQuantity(Unit unit, int digits, Rounding mode, out Quantity quantity)
    {
        quantity = default;
        if (unit.Dimension != Dimension || !unit.FromBase(Value).TryRound(digits, mode, out decimal value))
        {
            return false;
        }

        quantity = new Quantity(value, unit);
        return true;
    }

    /// <summary>Compares two amounts of one dimension; nothing is rounded.</summary>
    /// <exception cref="ArgumentException">The other measures something else.</exception>
    public int CompareTo(Exact other)
    {
        RequireSame(other.Dimension, nameof(other));
        return Value.CompareTo(other.Value);
    }

    /// <summary>Sum of two amounts of one dimension; of a temperature and a difference, the temperature that far on.</summary>
    /// <exception cref="ArgumentException">They do not add up.</exception>
    public static Exact operator +(Exact left, Exact right) =>
        left.Dimension.OfDifference() == right.Dimension
            ? new Exact(left.Value + right.Value, left.Dimension)
            : throw new ArgumentException($"A {left.Dimension} and a {right.Dimension} do not add up.", nameof(right));

    /// <summary>Difference of two amounts of one dimension; of two temperatures a temperature difference.</summary>
    /// <exception cref="ArgumentException">The other measures something else.</exception>
    public static Exact operator -(Exact left, Exact right)
    {
        left.RequireSame(right.Dimension, nameof(right));
        return new Exact(left.Value - right.Value, left.Dimension.OfDifference());
    }

    /// <summary>Product.</summary>
    /// <exception cref="ArgumentException">There is none, as of a place on a temperature scale.</exception>
    public static Exact operator *(Exact left, Exact right) =>
        new(left.Value * right.Value, left.Dimension.Times(right.Dimension));

    /// <summary>Quotient.</summary>
    /// <exception cref="ArgumentException">There is none, as of a place on a temperature scale.</exception>
    /// <exception cref="DivideByZeroException">The divisor is 0.</exception>
    public static Exact operator /(Exact left, Exact right) =>
        new(left.Value / right.Value, left.Dimension.Over(right.Dimension));

    private void RequireSame(Dimension other, string parameter)
    {
        if (other != Dimension)
        {
            throw new ArgumentException($"A {Dimension} does not compare with a {other}.", parameter);
        }
    }
}
