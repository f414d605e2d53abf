namespace ProcRunner.Runs;

/// <summary>What can be tried on a job.</summary>
public enum JobTrigger
{
    /// <summary>Work at any step.</summary>
    Work,

    /// <summary>A note.</summary>
    Note,

    /// <summary>Putting it aside.</summary>
    Hold,

    /// <summary>Taking it up again.</summary>
    TakeUp,

    /// <summary>Releasing it.</summary>
    Release,

    /// <summary>Giving the head up.</summary>
    Scrap,
}
