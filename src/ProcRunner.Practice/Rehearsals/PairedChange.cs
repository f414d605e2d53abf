namespace ProcRunner.Practice.Rehearsals;

/// <summary>
/// The same heads played in two ways: on how many the outcome changed, each way. Heads that came to the same say nothing, so
/// that far smaller differences show than between samples of their own (Q. McNemar 1947, Psychometrika 12, 153-157).
/// </summary>
/// <param name="Gained">Heads that are in spec the first time now and weren't before.</param>
/// <param name="Lost">Heads that were and aren't any more.</param>
/// <param name="Heads">Of how many.</param>
public readonly record struct PairedChange(long Gained, long Lost, long Heads)
{
    private const double Z = 1.959964;

    /// <summary>How much larger the share is.</summary>
    public double Change => Heads == 0 ? 0 : (double)(Gained - Lost) / Heads;

    /// <summary>Half the width of the range in which the change of all such heads lies, 95 times of 100.</summary>
    public double Error
    {
        get
        {
            double n = Heads;
            return Heads == 0 ? 1 : Z * Math.Sqrt(Math.Max(0, Gained + Lost - (Square(Gained - Lost) / n))) / n;
        }
    }

    /// <summary>True when chance alone makes such a change less than 5 times of 100.</summary>
    public bool Tells => Gained + Lost > 0 && Math.Abs(Gained - Lost) > Z * Math.Sqrt(Gained + Lost);

    private static double Square(double value) => value * value;
}
