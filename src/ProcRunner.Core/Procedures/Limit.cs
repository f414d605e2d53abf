using ProcRunner.Quantities;

namespace ProcRunner.Procedures;

/// <summary>
/// What must hold for one characteristic. Limits are inclusive: a value exactly on one passes.
/// Either end may be missing. A limit nobody knows yet carries <see cref="Ask"/> instead of figures.
/// </summary>
/// <param name="Name">The characteristic's name.</param>
/// <param name="Low">Least value that passes, or null.</param>
/// <param name="Aim">The value worked to; the middle of the range when not given.</param>
/// <param name="High">Greatest value that passes, or null.</param>
/// <param name="Origin">Who says so.</param>
/// <param name="Note">Free text shown beside the limit, or empty.</param>
/// <param name="Ask">Why the figures aren't known; they are asked for in the run and recorded with who chose them.</param>
public sealed record Limit(
    string Name,
    Quantity? Low,
    Quantity? Aim,
    Quantity? High,
    Origin Origin,
    string Note,
    string? Ask
);
