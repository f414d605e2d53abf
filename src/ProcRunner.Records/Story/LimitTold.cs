using ProcRunner.Runs;

namespace ProcRunner.Records.Story;

/// <summary>A limit that nobody knew, with who chose it.</summary>
/// <param name="Limit">The limit.</param>
/// <param name="Position">The position's name, or empty for all.</param>
/// <param name="By">Who chose it.</param>
public sealed record LimitTold(RunEvent.LimitChosen Limit, string Position, Stamped By);
