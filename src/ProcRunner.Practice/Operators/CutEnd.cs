using ProcRunner.Runs;

namespace ProcRunner.Practice.Operators;

/// <summary>A cut that came to its end, in limits or not.</summary>
/// <param name="At">Where.</param>
/// <param name="Deepest">The deepest place in truth, in base units.</param>
/// <param name="High">The high limit then, in base units; null when there was none.</param>
public readonly record struct CutEnd(At At, double Deepest, double? High)
{
    /// <summary>True when more came off than may.</summary>
    public bool IsOver => High is { } high && Deepest > high + 1e-7;
}
