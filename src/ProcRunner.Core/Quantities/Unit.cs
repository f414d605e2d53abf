namespace ProcRunner.Quantities;

/// <summary>
/// A unit: how it is written and its exact ratio to the base unit of its dimension (mm, kg, s, K, deg and what follows
/// from them: a force is in kg mm/s2, a pressure in kg/(mm s2)). Units come from the table <see cref="Units.All"/> alone.
/// </summary>
public sealed class Unit
{
    internal Unit(
        string symbol,
        string name,
        Dimension dimension,
        Rational factor,
        string source,
        string[] aliases,
        Rational offset = default
    )
    {
        Symbol = symbol;
        Name = name;
        Dimension = dimension;
        Factor = factor;
        Source = source;
        Aliases = Array.AsReadOnly(aliases);
        Offset = offset;
    }

    /// <summary>How the unit is written and stored; empty for a pure number.</summary>
    public string Symbol { get; }

    /// <summary>The unit in words, in the singular.</summary>
    public string Name { get; }

    /// <summary>Other ways to type it. No two units share one.</summary>
    public IReadOnlyList<string> Aliases { get; }

    /// <summary>What it measures.</summary>
    public Dimension Dimension { get; }

    /// <summary>Base units in one of this unit; above zero.</summary>
    public Rational Factor { get; }

    /// <summary>Base units at this unit's zero; other than 0 only for temperature points.</summary>
    public Rational Offset { get; }

    /// <summary>Where the factor comes from and whether it is exact.</summary>
    public string Source { get; }

    /// <summary>An amount of this unit in base units.</summary>
    public Rational ToBase(Rational value) => (value * Factor) + Offset;

    /// <summary>An amount of this unit, as it was entered, in base units.</summary>
    public Rational ToBase(decimal value)
    {
        Rational amount = Rational.FromDecimal(value, Factor);
        return Offset.IsZero ? amount : amount + Offset;
    }

    /// <summary>An amount of base units in this unit.</summary>
    public Rational FromBase(Rational value) => (Offset.IsZero ? value : value - Offset) / Factor;

    /// <summary>The symbol.</summary>
    public override string ToString() => Symbol;
}
