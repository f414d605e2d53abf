namespace ProcRunner.Lessons;

/// <summary>Which true value is meant.</summary>
/// <param name="Name">The dimension or condition of the practice head.</param>
/// <param name="Where">A kind of position (<c>E</c>), one position (<c>2E</c>), or null: of the head, or at every position.</param>
public readonly record struct TruthKey(string Name, string? Where);
