using ProcRunner.ShopMath;

namespace ProcRunner.Records.History;

/// <summary>How one kind of position keeps its limits. Lengths are in the trend's unit, deviations from the aim where there is one.</summary>
/// <param name="Kind">The kind of position; empty for the head.</param>
/// <param name="Count">How many readings.</param>
/// <param name="Mean">Their mean.</param>
/// <param name="Deviation">Their standard deviation, n - 1.</param>
/// <param name="Low">The low limit, or null.</param>
/// <param name="High">The high limit, or null.</param>
/// <param name="FromAim">True for deviations from an aim.</param>
/// <param name="Capability">With one limit, as for runout, only its side; null when there are too few readings or no limit.</param>
public sealed record KindCapability(
    string Kind,
    int Count,
    double Mean,
    double Deviation,
    double? Low,
    double? High,
    bool FromAim,
    Capability? Capability
);
