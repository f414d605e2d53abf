using System.Collections.Frozen;
using ProcRunner.Quantities;

namespace ProcRunner.Procedures;

/// <summary>
/// One head family: its positions, its limits with their origins, its figures, its features and what its maker
/// forbids. Immutable; read from a file under procedures/heads/.
/// </summary>
public sealed record HeadSpec
{
    /// <summary>Short name, as in the file.</summary>
    public required string Name { get; init; }

    /// <summary>What the head is, in words.</summary>
    public required string Title { get; init; }

    /// <summary>Revision of the file, from 1.</summary>
    public required int Revision { get; init; }

    /// <summary>When the file got this revision and what changed with it; null when it doesn't say.</summary>
    public Revised? Revised { get; init; }

    /// <summary>The casting's material, in words.</summary>
    public required string Material { get; init; }

    /// <summary>The unit of every length that is written without one.</summary>
    public required Unit LengthUnit { get; init; }

    /// <summary>Every valve's place, in the order of the head: by cylinder, then by kind.</summary>
    public required IReadOnlyList<Position> Positions { get; init; }

    /// <summary>Limits, by name and kind.</summary>
    public required FrozenDictionary<SpecKey, Limit> Limits { get; init; }

    /// <summary>Figures, by name and kind.</summary>
    public required FrozenDictionary<SpecKey, Figure> Figures { get; init; }

    /// <summary>What the head has or hasn't: pre-chambers, overhead cam.</summary>
    public required FrozenDictionary<string, bool> Features { get; init; }

    /// <summary>Work that the spec forbids, each with why: lapping, refacing.</summary>
    public required FrozenDictionary<string, string> Forbidden { get; init; }

    /// <summary>The limit for a characteristic at a position (null: of the head), or null when the spec has none.</summary>
    public Limit? LimitOf(string name, Position? position) => Find(Limits, name, position);

    /// <summary>The figure at a position (null: of the head), or null when the spec has none.</summary>
    public Figure? FigureOf(string name, Position? position) => Find(Figures, name, position);

    private static T? Find<T>(FrozenDictionary<SpecKey, T> from, string name, Position? position)
        where T : class
    {
        if (position is not null && from.TryGetValue(new SpecKey(name, position.Kind), out T? ofKind))
        {
            return ofKind;
        }

        return from.GetValueOrDefault(new SpecKey(name, null));
    }
}
