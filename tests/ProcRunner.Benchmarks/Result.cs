namespace ProcRunner.Benchmarks;

/// <summary>What came of a benchmark.</summary>
/// <param name="Name">What was measured.</param>
/// <param name="Goal">The goal in words.</param>
/// <param name="Figures">The figures in words.</param>
/// <param name="IsMet">Whether the goal is met.</param>
internal sealed record Result(string Name, string Goal, string Figures, bool IsMet)
{
    /// <inheritdoc/>
    public override string ToString() =>
        $"""
            {Name}
              {Figures}
              goal {Goal}: {(IsMet ? "met" : "NOT MET")}
            """;
}
