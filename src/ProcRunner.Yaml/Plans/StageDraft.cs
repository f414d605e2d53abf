using ProcRunner.Procedures;

namespace ProcRunner.Yaml.Plans;

/// <summary>A stage whose steps are known by name but not yet read.</summary>
/// <param name="Index">Place in the procedure.</param>
/// <param name="Name">Name.</param>
/// <param name="Walk">Order inside.</param>
/// <param name="AsFound">Whether its readings record the head as it came.</param>
/// <param name="Cautions">Cautions for the whole stage.</param>
internal sealed record StageDraft(int Index, string Name, Walk Walk, bool AsFound, IReadOnlyList<Caution> Cautions)
{
    public List<StepDraft> Steps { get; } = [];

    public HashSet<string> Names { get; } = new(StringComparer.Ordinal);
}
