namespace ProcRunner.Procedures;

/// <summary>What can be done about a result that is out of spec.</summary>
public enum WayKind
{
    /// <summary>Measure or inspect again; every reading is kept.</summary>
    Again,

    /// <summary>Go back to an earlier step and do it over.</summary>
    Rework,

    /// <summary>Another part, then over from an earlier step.</summary>
    Replace,

    /// <summary>Written permission to use what is out of spec: a lead, PIN and reason.</summary>
    Concession,

    /// <summary>The head is given up: a lead, PIN and reason. Ends the job.</summary>
    Scrap,
}
