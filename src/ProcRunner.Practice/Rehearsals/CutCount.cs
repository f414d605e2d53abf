namespace ProcRunner.Practice.Rehearsals;

/// <summary>Cuts of one step that came to their end: how many, how many too deep in truth, and what was left to the high limit.</summary>
public sealed class CutCount
{
    private readonly Spread _room = new();

    /// <summary>How many with a high limit.</summary>
    public long Cuts => _room.Count;

    /// <summary>How many of them went deeper than it, in truth.</summary>
    public long Over { get; private set; }

    /// <summary>What is left to the high limit at the deepest place, in truth, in base units: the mean.</summary>
    public double Room => _room.Mean;

    /// <summary>Its standard deviation; 0 below two cuts.</summary>
    public double Deviation => _room.Deviation;

    internal void Add(double room, bool isOver)
    {
        _room.Add(room);
        Over += isOver ? 1 : 0;
    }

    internal void Add(CutCount other)
    {
        _room.Add(other._room);
        Over += other.Over;
    }
}
