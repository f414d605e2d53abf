using ProcRunner.Problems;
using ProcRunner.Quantities;

namespace ProcRunner.Lessons;

/// <summary>A true value as a practice file gives it: what it is, and by how much heads differ.</summary>
/// <param name="Is">The value, or one for each place in order.</param>
/// <param name="Varies">Standard deviation from head to head, the same at every place; null: none.</param>
/// <param name="EachVaries">Standard deviation of each place for itself; null: none.</param>
/// <param name="Source">Where it stands in the file.</param>
public sealed record TrueValue(IReadOnlyList<Quantity> Is, Quantity? Varies, Quantity? EachVaries, Place Source);
