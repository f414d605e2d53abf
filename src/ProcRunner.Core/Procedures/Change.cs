namespace ProcRunner.Procedures;

/// <summary>Something that the operator reports at any time: a changed cutter edge, the readout lost power.</summary>
/// <param name="Name">What happened, in the operator's words.</param>
/// <param name="Moves">What it moves.</param>
/// <param name="Why">Why that matters.</param>
public sealed record Change(string Name, IReadOnlyList<Move> Moves, string Why);
