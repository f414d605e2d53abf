namespace ProcRunner.Runs;

/// <summary>Where a step at a position stands, as events left it. Whether it is open now is <see cref="Outlook"/>'s to say.</summary>
public enum StepStanding
{
    /// <summary>Not begun.</summary>
    Waiting,

    /// <summary>Begun: a zero being set, a cut between passes.</summary>
    InHand,

    /// <summary>Done, in limits or conceded.</summary>
    Done,

    /// <summary>Out of spec; waits for a disposition.</summary>
    Out,

    /// <summary>Left out with a reason.</summary>
    LeftOut,
}
