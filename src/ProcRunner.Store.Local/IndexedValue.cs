namespace ProcRunner.Store.Local;

/// <summary>A value that counts in a job.</summary>
/// <param name="Name">The characteristic.</param>
/// <param name="Position">Where, empty for the whole head.</param>
/// <param name="Text">The value with its unit, as in the trail.</param>
public sealed record IndexedValue(string Name, string Position, string Text);
