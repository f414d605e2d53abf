using ProcRunner.ShopMath;

namespace ProcRunner.Records.History;

/// <summary>One person's, gauge's, cutter's or head family's part of a reading's history.</summary>
/// <param name="Name">Whose; empty for all together, and for readings of which it isn't known.</param>
/// <param name="Readings">The readings, the oldest first.</param>
/// <param name="Values">What is charted of each, in the trend's unit: the value, or its deviation from the aim.</param>
/// <param name="Mean">Mean of what is charted; null without readings.</param>
/// <param name="Limits">Control limits; null when there are too few readings.</param>
/// <param name="Capabilities">By kind of position; a kind whose limits changed stands several times.</param>
public sealed record TrendGroup(
    string Name,
    IReadOnlyList<TrendReading> Readings,
    IReadOnlyList<double> Values,
    double? Mean,
    ControlLimits? Limits,
    IReadOnlyList<KindCapability> Capabilities
)
{
    /// <summary>The last reading out of spec, or null.</summary>
    public TrendReading? LastOut => Readings.LastOrDefault(r => r.IsOut);

    /// <summary>How many were out of spec.</summary>
    public int OutCount => Readings.Count(r => r.IsOut);

    /// <summary>True when there are too few readings to say anything of the process.</summary>
    public bool IsTooFew => Readings.Count < Trend.Least;

    /// <summary>The places in the chart of values outside the control limits.</summary>
    public IReadOnlyList<int> Strays =>
        Limits is { } limits
            ? [.. Enumerable.Range(0, Values.Count).Where(i => Values[i] < limits.Low || Values[i] > limits.High)]
            : [];
}
