namespace ProcRunner.Procedures;

/// <summary>When a file got its revision, and what changed with it.</summary>
/// <param name="On">The day.</param>
/// <param name="What">What changed, for whoever reads a record of a job that pins it.</param>
public sealed record Revised(DateOnly On, string What);
