using ProcRunner.Procedures;

namespace ProcRunner.Runs;

/// <summary>A limit of the head spec in a plan.</summary>
/// <param name="Limit">As the head spec has it.</param>
/// <param name="Exact">Its ends as exact amounts.</param>
internal sealed record PlanLimit(Limit Limit, LimitResult.Found Exact);
