namespace ProcRunner.Quantities;

/// <summary>What a field is waiting for; enough to read an entry, never to judge it.</summary>
public sealed record FieldHint
{
    /// <summary>A field.</summary>
    /// <param name="unit">The unit of a bare number.</param>
    /// <param name="fewestValues">How many readings the line must hold at least; 1 or more.</param>
    /// <param name="mostValues">How many at most.</param>
    /// <param name="low">The low end of what is expected, in any unit of the field's dimension; null if nothing is.</param>
    /// <param name="high">The high end; null if nothing is expected.</param>
    /// <exception cref="ArgumentException">The counts or the ends are the wrong way round, or an end measures something else.</exception>
    public FieldHint(Unit unit, int fewestValues = 1, int mostValues = 1, Quantity? low = null, Quantity? high = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(fewestValues, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(mostValues, fewestValues);
        if (low is { } bottom && high is { } top && bottom.CompareTo(top) > 0)
        {
            throw new ArgumentException($"The expected range runs from {bottom} down to {top}.", nameof(low));
        }

        if ((low ?? high) is { } end && end.Dimension != unit.Dimension)
        {
            throw new ArgumentException(
                $"The expected range is a {end.Dimension}, the field a {unit.Dimension}.",
                nameof(low)
            );
        }

        Unit = unit;
        FewestValues = fewestValues;
        MostValues = mostValues;
        Low = low;
        High = high;
    }

    /// <summary>The unit of a bare number.</summary>
    public Unit Unit { get; }

    /// <summary>How many readings the line must hold at least.</summary>
    public int FewestValues { get; }

    /// <summary>How many readings the line may hold at most.</summary>
    public int MostValues { get; }

    /// <summary>The low end of what is expected.</summary>
    public Quantity? Low { get; }

    /// <summary>The high end of what is expected.</summary>
    public Quantity? High { get; }
}
