namespace ProcRunner.Records.Story;

/// <summary>A result out of spec, from the first reading to how it was settled.</summary>
/// <param name="Step">The step, with its stage.</param>
/// <param name="Position">The position's name, or "head".</param>
/// <param name="Lines">What happened, in order.</param>
/// <param name="End">How it ended.</param>
/// <param name="Outcome">The same in words.</param>
public sealed record Case(string Step, string Position, IReadOnlyList<CaseLine> Lines, CaseEnd End, string Outcome);
