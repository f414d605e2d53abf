using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>What came of writing an entry.</summary>
public abstract record AppendResult
{
    private AppendResult() { }

    /// <summary>The entry is on the medium, and so is what the shop book has to say of it.</summary>
    public sealed record Written(TrailEntry Entry, Digest Digest) : AppendResult;

    /// <summary>Nothing was acknowledged; the same may be tried again once the cause is gone.</summary>
    /// <param name="Why">The cause, in words.</param>
    public sealed record Failed(string Why) : AppendResult;

    /// <summary>The store doesn't write this, now or later.</summary>
    /// <param name="Why">The reason, in words.</param>
    public sealed record Refused(string Why) : AppendResult;
}
