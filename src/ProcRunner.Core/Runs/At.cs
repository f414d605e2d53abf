namespace ProcRunner.Runs;

/// <summary>A step at a position, or a step of the head.</summary>
/// <param name="Step">Index of the step in the procedure.</param>
/// <param name="Position">Index of the position in the head spec; <see cref="Head"/> for a step of the head.</param>
public readonly record struct At(int Step, int Position)
{
    /// <summary>The position index that stands for the head itself.</summary>
    public const int Head = -1;
}
