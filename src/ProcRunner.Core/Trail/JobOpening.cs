using System.Collections.Immutable;

namespace ProcRunner.Trail;

/// <summary>What the first entry of a job's trail says for the store: enough to enter the job in the shop book again.</summary>
/// <param name="Stamp">The job's stamp, unique in its store.</param>
/// <param name="Texts">The digests of the pinned texts (procedure, head spec, ...).</param>
public sealed record JobOpening(string Stamp, ImmutableArray<Digest> Texts)
{
    /// <summary>True when the other opening has the same stamp and texts.</summary>
    public bool Equals(JobOpening? other) =>
        other is not null && Stamp == other.Stamp && Texts.AsSpan().SequenceEqual(other.Texts.AsSpan());

    /// <inheritdoc/>
    public override int GetHashCode() => Stamp.GetHashCode(StringComparison.Ordinal);
}
