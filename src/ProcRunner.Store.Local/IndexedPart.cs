namespace ProcRunner.Store.Local;

/// <summary>A part fitted in a job.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Number">Its part number.</param>
/// <param name="Lot">Its lot.</param>
/// <param name="Position">Where it went, empty for the whole head.</param>
public sealed record IndexedPart(string Name, string Number, string Lot, string Position)
{
    /// <summary>False when another one took its place later.</summary>
    public bool IsInPlace { get; init; } = true;
}
