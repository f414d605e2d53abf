namespace ProcRunner.Trail;

/// <summary>How far the shop book had got when something was written.</summary>
/// <param name="Sequence">The book's last entry then; 0 before the first.</param>
/// <param name="Digest">That entry's digest; zero before the first.</param>
public sealed record BookMark(long Sequence, Digest Digest)
{
    /// <summary>Before the book's first entry.</summary>
    public static BookMark None { get; } = new(0, Digest.Zero);
}
