namespace ProcRunner.Records.Story;

/// <summary>A part that was fitted.</summary>
/// <param name="Part">What it is.</param>
/// <param name="Position">The position's name, or "head".</param>
/// <param name="Number">Its number.</param>
/// <param name="Lot">Its lot.</param>
/// <param name="IsInPlace">False when another one took its place later.</param>
/// <param name="By">Who fitted it.</param>
public sealed record PartTold(string Part, string Position, string Number, string Lot, bool IsInPlace, Stamped By);
