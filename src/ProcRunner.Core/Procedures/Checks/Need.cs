namespace ProcRunner.Procedures.Checks;

/// <summary>Something a head spec lacks.</summary>
/// <param name="Code">The problem's code.</param>
/// <param name="What">In words.</param>
/// <param name="Step">The first step that needs it.</param>
internal sealed record Need(string Code, string What, Step Step)
{
    /// <summary>For which kinds of position, or the head, it is missing.</summary>
    public SortedSet<string> Kinds { get; } = new(StringComparer.Ordinal);
}
