namespace ProcRunner.Tui.Screens.Run;

/// <summary>How a position stands for the step in hand.</summary>
internal enum PlaceMark
{
    /// <summary>Still to come.</summary>
    Waiting,

    /// <summary>In hand.</summary>
    Now,

    /// <summary>Done.</summary>
    Done,

    /// <summary>Out of spec.</summary>
    Out,

    /// <summary>Done, and its datum has moved since.</summary>
    Recheck,

    /// <summary>Not asked for here.</summary>
    NotHere,
}
