namespace ProcRunner.Lessons;

/// <summary>Gauges from a file of their own.</summary>
/// <param name="Gauges">The gauges.</param>
public sealed record GaugeList(IReadOnlyList<GaugeCharacter> Gauges)
{
    /// <summary>A setup with these gauges in place of its own of the same kinds.</summary>
    public PracticeSetup In(PracticeSetup setup) =>
        setup with
        {
            Gauges = [.. setup.Gauges.Where(g => Gauges.All(mine => mine.Gauge.Kind != g.Gauge.Kind)), .. Gauges],
        };
}
