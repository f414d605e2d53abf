namespace ProcRunner.People;

/// <summary>A person's wrong PINs since the last right one.</summary>
/// <param name="InARow">How many; 1 or more.</param>
/// <param name="LastAt">When the last one was written down, by the clock then.</param>
public sealed record WrongPins(long InARow, DateTimeOffset LastAt);
