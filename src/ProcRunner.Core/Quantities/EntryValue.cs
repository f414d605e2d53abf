namespace ProcRunner.Quantities;

/// <summary>One value of an entry, as read.</summary>
/// <param name="Quantity">The value, in the unit typed or else the field's.</param>
/// <param name="Text">The value with its unit, as an entry that leaves no doubt.</param>
/// <param name="IsBare">Whether it was typed without a unit.</param>
internal readonly record struct EntryValue(Quantity Quantity, string Text, bool IsBare);
