using System.Collections.Frozen;
using ProcRunner.Quantities;

namespace ProcRunner.Procedures;

/// <summary>An ordered list of stages with all that they refer to. Immutable; read from a file under procedures/.</summary>
public sealed record Procedure
{
    /// <summary>Short name, as in the file.</summary>
    public required string Name { get; init; }

    /// <summary>What it is for, in words.</summary>
    public required string Title { get; init; }

    /// <summary>Revision of the file, from 1.</summary>
    public required int Revision { get; init; }

    /// <summary>When the file got this revision and what changed with it; null when it doesn't say.</summary>
    public Revised? Revised { get; init; }

    /// <summary>Every characteristic, those worked out by steps included, in order.</summary>
    public required IReadOnlyList<Characteristic> Characteristics { get; init; }

    /// <summary>Every datum.</summary>
    public required IReadOnlyList<Datum> Datums { get; init; }

    /// <summary>What the operator can report.</summary>
    public required IReadOnlyList<Change> Changes { get; init; }

    /// <summary>Settings by name.</summary>
    public required FrozenDictionary<string, Setting> Settings { get; init; }

    /// <summary>Figures that the head spec must give, each with its kind of quantity.</summary>
    public required FrozenDictionary<string, Dimension> Figures { get; init; }

    /// <summary>Features that the head spec must answer for.</summary>
    public required FrozenSet<string> Features { get; init; }

    /// <summary>The stages, in order.</summary>
    public required IReadOnlyList<Stage> Stages { get; init; }

    /// <summary>The steps of all stages, in order; a step's index is its place here.</summary>
    public required IReadOnlyList<Step> Steps { get; init; }

    /// <summary>Names of its own for what the build record shows: what of <see cref="RecordRoles"/>, to the value's name.</summary>
    public FrozenDictionary<string, string> RecordNames { get; init; } = FrozenDictionary<string, string>.Empty;

    /// <summary>Names of the steps whose instruction is meant for whoever builds the engine.</summary>
    public IReadOnlyList<string> ForTheBuilder { get; init; } = RecordRoles.ForTheBuilder;

    /// <summary>The value that the build record shows for something; null when the procedure has none.</summary>
    /// <param name="role">One of <see cref="RecordRoles"/>.</param>
    public string? ValueShownAs(string role) =>
        RecordNames.TryGetValue(role, out string? own) ? own
        : RecordNames.Values.Contains(role) ? null
        : Characteristics.FirstOrDefault(c => c.Name == role)?.Name;
}
