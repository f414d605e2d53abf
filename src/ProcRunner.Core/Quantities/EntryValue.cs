namespace ProcRunner.Quantities;

/// <summary>One value of an entry, as read.</summary>
/// <param name="Quantity">The value, in the unit typed after it or at the end of the line, or else the field's.</param>
/// <param name="Typed">As it was typed with its unit, where that isn't how the quantity is written; null elsewhere.</param>
/// <param name="IsBare">Whether it was typed without a unit of its own.</param>
internal readonly record struct EntryValue(Quantity Quantity, string? Typed, bool IsBare)
{
    /// <summary>The value with its unit, as an entry that leaves no doubt.</summary>
    public string Text => Typed ?? Quantity.ToString();
}
