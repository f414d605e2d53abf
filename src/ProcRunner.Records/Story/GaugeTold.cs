using ProcRunner.Shop;

namespace ProcRunner.Records.Story;

/// <summary>A gauge that was read.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Gauge">What the shop book says of it; null when it names none such.</param>
/// <param name="Readings">How many readings were taken with it.</param>
public sealed record GaugeTold(string Id, Gauge? Gauge, int Readings);
