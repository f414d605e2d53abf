namespace ProcRunner.Practice.Rehearsals;

/// <summary>A share found in a sample, with what chance leaves open about it.</summary>
/// <param name="Part">How many.</param>
/// <param name="Of">Of how many.</param>
public readonly record struct Proportion(long Part, long Of)
{
    // The two-sided 95 % point of the normal distribution.
    private const double Z = 1.959964;

    /// <summary>The share, 0 of nothing.</summary>
    public double Share => Of == 0 ? 0 : (double)Part / Of;

    /// <summary>
    /// Between which ends the share of all such heads lies, 95 times of 100: the score interval (E. B. Wilson 1927, Journal of
    /// the American Statistical Association 22, 209-212). From 0 to 1 for nothing.
    /// </summary>
    public (double Low, double High) Interval
    {
        get
        {
            if (Of == 0)
            {
                return (0, 1);
            }

            double n = Of;
            double p = Share;
            double middle = (p + (Z * Z / (2 * n))) / (1 + (Z * Z / n));
            double half = Z * Math.Sqrt((p * (1 - p) / n) + (Z * Z / (4 * n * n))) / (1 + (Z * Z / n));
            return (Part == 0 ? 0 : Math.Max(0, middle - half), Part == Of ? 1 : Math.Min(1, middle + half));
        }
    }

    /// <summary>
    /// True when two shares of samples of their own lie further apart than chance makes 95 times of 100 (two proportions, pooled;
    /// NIST/SEMATECH e-Handbook, 7.3.3).
    /// </summary>
    public static bool Differ(Proportion a, Proportion b)
    {
        if (a.Of == 0 || b.Of == 0)
        {
            return false;
        }

        double pooled = (double)(a.Part + b.Part) / (a.Of + b.Of);
        double error = Math.Sqrt(pooled * (1 - pooled) * ((1.0 / a.Of) + (1.0 / b.Of)));
        return Math.Abs(a.Share - b.Share) > Z * error;
    }
}
