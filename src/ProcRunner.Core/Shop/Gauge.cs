using ProcRunner.Quantities;

namespace ProcRunner.Shop;

/// <summary>A gauge of the shop.</summary>
/// <param name="Id">Short and unique in the shop.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Kind">What kind of gauge it is, as procedures name kinds.</param>
/// <param name="Resolution">The smallest step it shows.</param>
/// <param name="Uncertainty">Expanded uncertainty, coverage factor 2.</param>
/// <param name="Turn">What one turn of its dial is, null when it has no dial that turns over.</param>
/// <param name="CalibratedUntil">The last day on which its calibration holds, null when it isn't calibrated by date.</param>
public sealed record Gauge(
    string Id,
    string Name,
    string Kind,
    Quantity Resolution,
    Quantity Uncertainty,
    Quantity? Turn,
    DateOnly? CalibratedUntil
);
