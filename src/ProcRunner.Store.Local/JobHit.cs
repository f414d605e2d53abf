namespace ProcRunner.Store.Local;

/// <summary>A job that was found.</summary>
/// <param name="Job">The job, without its readings.</param>
/// <param name="Rank">How well it fits: the higher, the better; 100 is the stamp itself, 0 nothing was looked for.</param>
/// <param name="Field">Where it was found, null when nothing was looked for.</param>
/// <param name="Found">What stands there.</param>
public sealed record JobHit(IndexedJob Job, int Rank, JobField? Field, string Found)
{
    /// <summary>True when the stamp is only like what was looked for.</summary>
    public bool IsLike => Field == JobField.Stamp && StampLikeness.IsLike(Rank);
}
