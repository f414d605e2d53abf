using ProcRunner.Problems;

namespace ProcRunner.Lessons;

/// <summary>A condition as a practice file gives it.</summary>
/// <param name="Word">The condition in a word.</param>
/// <param name="Share">How often, of 1; else it is sound.</param>
/// <param name="Source">Where it stands in the file.</param>
public readonly record struct TrueCondition(string Word, double Share, Place Source);
