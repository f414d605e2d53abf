using ProcRunner.Quantities;

namespace ProcRunner.Records.History;

/// <summary>A reading of the shop's past.</summary>
/// <param name="At">When it was taken.</param>
/// <param name="Value">The value.</param>
/// <param name="Low">The low limit of that day, or null.</param>
/// <param name="Aim">The aim of that day, or null.</param>
/// <param name="High">The high limit of that day, or null.</param>
/// <param name="IsOut">True when it was out of spec.</param>
public sealed record TrendReading(
    DateTimeOffset At,
    Quantity Value,
    Quantity? Low,
    Quantity? Aim,
    Quantity? High,
    bool IsOut
)
{
    /// <summary>The stamp of the head it was taken on.</summary>
    public string Stamp { get; init; } = "";

    /// <summary>The position, "head" for the head.</summary>
    public string Position { get; init; } = "";

    /// <summary>The kind of position; empty for the head.</summary>
    public string Kind { get; init; } = "";

    /// <summary>Who took it.</summary>
    public string Person { get; init; } = "";

    /// <summary>The gauge; empty for none.</summary>
    public string Gauge { get; init; } = "";

    /// <summary>The cutter; empty when none was named.</summary>
    public string Cutter { get; init; } = "";

    /// <summary>The head family.</summary>
    public string Head { get; init; } = "";
}
