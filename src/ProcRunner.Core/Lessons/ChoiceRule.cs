using ProcRunner.Problems;

namespace ProcRunner.Lessons;

/// <summary>When the model operator makes a choice; the first rule of a decision that holds decides.</summary>
/// <param name="Choose">The choice.</param>
/// <param name="Reading">A reading that is out of <paramref name="Limit"/>; null: not asked.</param>
/// <param name="Limit">The head spec's limit that the reading is held against.</param>
/// <param name="Found">An inspection whose finding is one of <paramref name="Is"/>; null: not asked.</param>
/// <param name="Is">The findings meant.</param>
/// <param name="Source">Where it stands in the file.</param>
public sealed record ChoiceRule(
    string Choose,
    string? Reading,
    string? Limit,
    string? Found,
    IReadOnlyList<string> Is,
    Place Source
);
