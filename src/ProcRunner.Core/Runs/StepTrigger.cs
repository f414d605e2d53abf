namespace ProcRunner.Runs;

/// <summary>What can be tried on a step.</summary>
public enum StepTrigger
{
    /// <summary>An entry.</summary>
    Enter,

    /// <summary>A correction of the last entry.</summary>
    Correct,

    /// <summary>Lifting the cutter, or ending a cut early.</summary>
    BreakCut,

    /// <summary>A disposition.</summary>
    TakeWay,

    /// <summary>A sign-off.</summary>
    Sign,

    /// <summary>Leaving it out.</summary>
    LeaveOut,

    /// <summary>Taking back that it was left out.</summary>
    TakeBack,

    /// <summary>Something it rests on moves.</summary>
    GoStale,

    /// <summary>Work elsewhere sends the run back here.</summary>
    Reopen,
}
