namespace ProcRunner.Runs;

/// <summary>An entry put in place of another. Both stand in the trail; whoever shows a job shows both.</summary>
/// <param name="Sequence">The entry that corrects.</param>
/// <param name="At">The step and position.</param>
/// <param name="Was">What stood there before, in words.</param>
/// <param name="Became">What took its place, in words.</param>
/// <param name="Reason">Why.</param>
public sealed record CorrectedEntry(long Sequence, At At, string Was, string Became, string Reason);
