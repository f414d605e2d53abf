namespace ProcRunner.Practice.Rehearsals;

/// <summary>Cuts of one step that came to their end: how many, how many too deep in truth, and what was left to the high limit.</summary>
public sealed class CutCount
{
    private double _mean;
    private double _squares;

    /// <summary>How many with a high limit.</summary>
    public long Cuts { get; private set; }

    /// <summary>How many of them went deeper than it, in truth.</summary>
    public long Over { get; private set; }

    /// <summary>What is left to the high limit at the deepest place, in truth, in base units: the mean.</summary>
    public double Room => _mean;

    /// <summary>Its standard deviation; 0 below two cuts.</summary>
    public double Deviation => Cuts > 1 ? Math.Sqrt(_squares / (Cuts - 1)) : 0;

    internal void Add(double room, bool isOver)
    {
        Cuts++;
        Over += isOver ? 1 : 0;
        double off = room - _mean;
        _mean += off / Cuts;
        _squares += off * (room - _mean);
    }

    internal void Add(CutCount other)
    {
        if (other.Cuts == 0)
        {
            return;
        }

        long cuts = Cuts + other.Cuts;
        double off = other._mean - _mean;
        _squares += other._squares + (off * off * Cuts * other.Cuts / cuts);
        _mean += off * other.Cuts / cuts;
        (Cuts, Over) = (cuts, Over + other.Over);
    }
}
