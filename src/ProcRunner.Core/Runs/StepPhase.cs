namespace ProcRunner.Runs;

/// <summary>Where a step stands for the machine that guards it: its standing, and whether it is to be taken again.</summary>
public enum StepPhase
{
    /// <summary>Not begun.</summary>
    Waiting,

    /// <summary>Begun.</summary>
    InHand,

    /// <summary>Done and holding.</summary>
    Done,

    /// <summary>Done, and something it rests on has moved since.</summary>
    Recheck,

    /// <summary>Out of spec.</summary>
    Out,

    /// <summary>Left out.</summary>
    LeftOut,
}
