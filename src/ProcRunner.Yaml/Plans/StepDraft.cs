using ProcRunner.Problems;
using ProcRunner.Procedures;
using ProcRunner.Yaml.Trees;
using ProcRunner.Yaml.Values;

namespace ProcRunner.Yaml.Plans;

/// <summary>
/// A step of which is known what other steps may say about it: kind, subject, name, and where it is done. Its other keys
/// are read once every draft is there, since they name steps and values of the whole procedure.
/// </summary>
internal sealed record StepDraft
{
    public required Keys Keys { get; init; }

    public required StageDraft Stage { get; init; }

    public required int Index { get; init; }

    public required StepKind Kind { get; init; }

    public required string Subject { get; init; }

    public required string Name { get; init; }

    /// <summary>The reading it takes, or null.</summary>
    public required Characteristic? Reading { get; init; }

    public required bool OfHead { get; init; }

    public required IReadOnlyList<string> Kinds { get; init; }

    public required Place Place { get; init; }

    public string FullName => $"{Stage.Name} / {Name}";

    /// <summary>Its works-out entries that can be read as entries, by name.</summary>
    public IReadOnlyList<Node.MapEntry> WorksOut { get; init; } = [];
}
