namespace ProcRunner.Store.Local;

/// <summary>Where a job fits what is looked for, and how well.</summary>
/// <param name="Field">The field.</param>
/// <param name="Rank">The higher, the better; 0 for not at all.</param>
/// <param name="Text">The number of the text that stands there.</param>
internal readonly record struct JobMatch(JobField Field, int Rank, int Text)
{
    /// <summary>True when a stamp is only like what is looked for.</summary>
    public bool IsLike => Field == JobField.Stamp && Rank is > 0 and <= StampLikeness.Folded;
}
