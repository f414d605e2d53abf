namespace ProcRunner.Tui.Screens.Run;

/// <summary>What stands at the bottom of a page.</summary>
internal sealed record Foot
{
    /// <summary>What was recorded last.</summary>
    public required string Said { get; init; }

    /// <summary>What the line waits for.</summary>
    public required string Label { get; init; }

    /// <summary>What stands in it.</summary>
    public required string Typed { get; init; }

    /// <summary>The unit of a number typed bare.</summary>
    public string Unit { get; init; } = "";

    /// <summary>True for a PIN.</summary>
    public bool Secret { get; init; }

    /// <summary>The keys that work here, left of the middle.</summary>
    public required string Keys { get; init; }

    /// <summary>The keys that work here, right of the middle.</summary>
    public string MoreKeys { get; init; } = "/ menu";
}
