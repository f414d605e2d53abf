namespace ProcRunner.Records.Story;

/// <summary>A mark, with its signature.</summary>
/// <param name="Mark">Who, what for, when.</param>
/// <param name="Step">The step it stands at, as people name it.</param>
/// <param name="By">The entry it is in.</param>
public sealed record MarkTold(JobMark Mark, string Step, Stamped By);
