namespace ProcRunner.Procedures;

/// <summary>
/// What the build record draws, reckons with and advises by: each a value that a procedure has under this name, or under a name
/// of its own that its <c>build-record</c> gives.
/// </summary>
public static class RecordRoles
{
    /// <summary>Depth of the closed valve below the deck.</summary>
    public const string Recession = "recession";

    /// <summary>Least clearance of a stem in its guide.</summary>
    public const string Clearance = "least clearance";

    /// <summary>How far a seat wanders round its guide.</summary>
    public const string SeatRunout = "seat runout";

    /// <summary>What the closed port held at the end.</summary>
    public const string Vacuum = "final vacuum";

    /// <summary>Spring load with the valve closed.</summary>
    public const string LoadClosed = "spring load closed";

    /// <summary>Spring load with the valve open.</summary>
    public const string LoadOpen = "spring load open";

    /// <summary>Height of the stem's tip.</summary>
    public const string StemHeight = "stem height";

    /// <summary>Thickness of the valve's edge.</summary>
    public const string Margin = "margin";

    /// <summary>Height that the spring stands at.</summary>
    public const string InstalledHeight = "installed height";

    /// <summary>Thickness of the head.</summary>
    public const string DeckThickness = "deck thickness";

    /// <summary>How far the deck is from flat.</summary>
    public const string Flatness = "flatness";

    /// <summary>What came off the deck now.</summary>
    public const string SkimTaken = "skim taken";

    /// <summary>What earlier skims took.</summary>
    public const string LostBefore = "head lost before";

    /// <summary>What the block lost.</summary>
    public const string BlockLost = "block lost";

    /// <summary>All of them, each with whether it is one of the head or one of each position.</summary>
    public static IReadOnlyList<(string Role, bool OfHead)> All { get; } =
    [
        (Recession, false),
        (Clearance, false),
        (SeatRunout, false),
        (Vacuum, false),
        (LoadClosed, false),
        (LoadOpen, false),
        (StemHeight, false),
        (Margin, false),
        (InstalledHeight, false),
        (DeckThickness, true),
        (Flatness, true),
        (SkimTaken, true),
        (LostBefore, true),
        (BlockLost, true),
    ];

    /// <summary>Steps whose instruction is meant for the engine builder, where a procedure doesn't say which are.</summary>
    public static IReadOnlyList<string> ForTheBuilder { get; } = ["hand-over notes", "cam timing note"];
}
