namespace ProcRunner.Procedures;

/// <summary>Which end of a limit a formula reads.</summary>
public enum LimitEnd
{
    /// <summary>Least value that passes.</summary>
    Low,

    /// <summary>The value worked to.</summary>
    Aim,

    /// <summary>Greatest value that passes.</summary>
    High,
}
