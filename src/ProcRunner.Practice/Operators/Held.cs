namespace ProcRunner.Practice.Operators;

/// <summary>What a value that counts at the release said, and what is true then.</summary>
/// <param name="Characteristic">Index of the characteristic.</param>
/// <param name="Position">Index of the position, -1 for the head.</param>
/// <param name="Place">The place, empty for a single value.</param>
/// <param name="Shown">What was entered, in base units.</param>
/// <param name="TrueNow">What is true in the end.</param>
/// <param name="Low">Low limit in base units, or null.</param>
/// <param name="High">High limit in base units, or null.</param>
/// <param name="Standard">The reading's standard uncertainty, in base units.</param>
/// <param name="Moved">True when the head changed there after the reading and nobody asked for it again.</param>
/// <param name="Slipped">True when a reading behind it was a slip: a turn off, not zeroed, a dirty seat, a bent pilot.</param>
/// <param name="Conceded">True when it stands by a concession.</param>
public readonly record struct Held(
    int Characteristic,
    int Position,
    string Place,
    double Shown,
    double TrueNow,
    double? Low,
    double? High,
    double Standard,
    bool Moved,
    bool Slipped,
    bool Conceded
)
{
    private const double Farthest = 6;

    /// <summary>True when what is true in the end is out of the limits, by more than arithmetic.</summary>
    public bool IsOut => Misses(TrueNow, Low, High);

    /// <summary>True when the reading as entered was within the limits.</summary>
    public bool WasPassed => !Misses(Shown, Low, High);

    /// <summary>
    /// True when it is out, nobody conceded it, and no error of a gauge can be why: it wasn't passed, the head changed after it was
    /// read, or the truth lies further off than any reading without a slip does (six standard uncertainties).
    /// </summary>
    public bool IsUnexplained =>
        IsOut
        && !Conceded
        && (!WasPassed || Moved || (!Slipped && Math.Abs(TrueNow - Shown) > (Farthest * Standard) + 1e-7));

    /// <summary>By how many standard uncertainties of its reading the truth lies off what was read; 0 without any.</summary>
    public double Deviations => Standard > 0 ? (TrueNow - Shown) / Standard : 0;

    internal static bool Misses(double value, double? low, double? high) =>
        (low is { } least && value < least - 1e-7) || (high is { } most && value > most + 1e-7);
}
