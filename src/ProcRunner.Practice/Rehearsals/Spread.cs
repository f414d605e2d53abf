namespace ProcRunner.Practice.Rehearsals;

/// <summary>
/// Mean and spread of values of which none is kept: B. P. Welford, "Note on a method for calculating corrected sums of squares
/// and products", Technometrics 4 (1962); two of them put together by Chan, Golub and LeVeque (1979). Sources from memory.
/// </summary>
internal sealed class Spread
{
    private double _squares;

    /// <summary>How many values.</summary>
    public long Count { get; private set; }

    /// <summary>Their mean; 0 without values.</summary>
    public double Mean { get; private set; }

    /// <summary>Their standard deviation; 0 below two values.</summary>
    public double Deviation => Count > 1 ? Math.Sqrt(_squares / (Count - 1)) : 0;

    /// <summary>One more value.</summary>
    public void Add(double value)
    {
        Count++;
        double off = value - Mean;
        Mean += off / Count;
        _squares += off * (value - Mean);
    }

    /// <summary>The values of another one as well.</summary>
    public void Add(Spread other)
    {
        if (other.Count == 0)
        {
            return;
        }

        long count = Count + other.Count;
        double off = other.Mean - Mean;
        _squares += other._squares + (off * off * Count * other.Count / count);
        Mean += off * other.Count / count;
        Count = count;
    }
}
