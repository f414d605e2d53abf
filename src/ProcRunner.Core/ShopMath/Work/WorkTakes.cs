using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>What may be given for a parameter of a <see cref="WorkFunction"/>.</summary>
public abstract record WorkTakes
{
    private WorkTakes() { }

    /// <summary>One quantity, in any unit of the dimension of that unit.</summary>
    /// <param name="Unit">The usual unit, for a message; a number without a unit is refused, unless this is a pure number.</param>
    public sealed record Amount(Unit Unit) : WorkTakes
    {
        /// <summary>The dimension in words.</summary>
        public override string ToString() => Unit.Dimension.ToString();
    }

    /// <summary>
    /// Several quantities with spaces between; a unit counts for all numbers before it that have none
    /// (<c>0.3131 0.3133 in</c>).
    /// </summary>
    /// <param name="Unit">The usual unit.</param>
    /// <param name="Least">The fewest that make sense.</param>
    public sealed record Amounts(Unit Unit, int Least) : WorkTakes
    {
        /// <summary>The dimension and the least count.</summary>
        public override string ToString() => FormattableString.Invariant($"{Unit.Dimension}, {Least} or more");
    }

    /// <summary>
    /// Quantities of whatever kind, as lengths or loads, but of one kind in all arguments of the function that take this. The
    /// first given decides the kind, and its unit is the unit of the results.
    /// </summary>
    /// <param name="Least">The fewest that make sense.</param>
    /// <param name="Most">The most.</param>
    public sealed record Alike(int Least = 1, int Most = 1) : WorkTakes
    {
        /// <summary>In words.</summary>
        public override string ToString() =>
            Most == 1
                ? "quantity of any kind"
                : FormattableString.Invariant($"quantities of any one kind, {Least} or more");
    }

    /// <summary>One of some words.</summary>
    /// <param name="Choices">All that are allowed, as they are written.</param>
    public sealed record Word(IReadOnlyList<string> Choices) : WorkTakes
    {
        /// <summary>The words.</summary>
        public override string ToString() => "one of " + string.Join(", ", Choices);
    }
}
