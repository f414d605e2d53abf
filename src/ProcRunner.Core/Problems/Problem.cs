namespace ProcRunner.Problems;

/// <summary>Something a file got wrong, with its place and what to do about it. Collected, never thrown.</summary>
/// <param name="Code">A stable code from <see cref="ProblemCodes"/>.</param>
/// <param name="Place">Where it stands.</param>
/// <param name="Text">What was read, what was expected, what to do.</param>
public sealed record Problem(string Code, Place Place, string Text)
{
    /// <summary>One line, as <c>procrunner check</c> prints it.</summary>
    public override string ToString() => $"{Place}: {Code} {Text}";
}
