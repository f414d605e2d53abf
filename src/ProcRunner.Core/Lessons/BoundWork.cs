using ProcRunner.Problems;

namespace ProcRunner.Lessons;

/// <summary>What carrying out a step, or taking a way on, does to the practice head.</summary>
/// <param name="Step">The step's full name, or the words of a way on.</param>
/// <param name="Work">Name of the work, of the practice head's table of works.</param>
/// <param name="To">What it works to: names of readings or limits that are added up; empty when it needs none.</param>
/// <param name="Source">Where it stands in the file.</param>
public sealed record BoundWork(string Step, string Work, IReadOnlyList<AimTerm> To, Place Source);
