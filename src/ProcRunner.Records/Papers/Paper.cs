namespace ProcRunner.Records.Papers;

/// <summary>A record as people read it, before it is a page or a paper.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Subject">What it is about, beneath the title.</param>
/// <param name="Foot">What stands at the foot of every sheet of paper.</param>
/// <param name="Across">A word across every sheet: practice; empty for none.</param>
/// <param name="Blocks">Its pieces.</param>
internal sealed record Paper(string Title, string Subject, string Foot, string Across, IReadOnlyList<Block> Blocks);
