namespace ProcRunner.ShopMath;

/// <summary>Standard uncertainty of a value known only to lie between two ends (JCGM 100:2008, 4.3.7 to 4.3.9).</summary>
public static class StandardUncertainty
{
    /// <summary>Anything between is as likely: half width / sqrt 3 (4.3.7), in the unit of the half width.</summary>
    /// <param name="halfWidth">Finite, 0 or more: the caller has checked it.</param>
    public static double Rectangular(double halfWidth) => halfWidth / Math.Sqrt(3);

    /// <summary>The middle is likeliest, the ends are not: half width / sqrt 6 (4.3.9), in the unit of the half width.</summary>
    /// <param name="halfWidth">Finite, 0 or more: the caller has checked it.</param>
    public static double Triangular(double halfWidth) => halfWidth / Math.Sqrt(6);

    /// <summary>Of a display that shows steps: step / (2 sqrt 3) (F.2.2.1), in the unit of the step.</summary>
    /// <param name="step">Finite, above 0: the caller has checked it.</param>
    public static double OfStep(double step) => Rectangular(step / 2);
}
