namespace ProcRunner.Procedures;

/// <summary>In which order a stage goes through its steps and positions, unless the operator chooses.</summary>
public enum Walk
{
    /// <summary>All steps at one position, then the next.</summary>
    ByPosition,

    /// <summary>One step at every position, then the next step.</summary>
    ByStep,

    /// <summary>All intakes position by position, then all exhausts: one cutter set-up after the other.</summary>
    ByKind,
}
