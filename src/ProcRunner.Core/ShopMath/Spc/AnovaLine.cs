namespace ProcRunner.ShopMath;

/// <summary>A line of an analysis of variance.</summary>
/// <param name="SumOfSquares">About the mean.</param>
/// <param name="DegreesOfFreedom">1 or more.</param>
public readonly record struct AnovaLine(double SumOfSquares, int DegreesOfFreedom)
{
    /// <summary>Sum of squares per degree of freedom.</summary>
    public double MeanSquare => SumOfSquares / DegreesOfFreedom;
}
