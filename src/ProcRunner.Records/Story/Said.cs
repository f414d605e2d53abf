namespace ProcRunner.Records.Story;

/// <summary>Something that was said: a finding, a choice, a note, a reason.</summary>
/// <param name="About">What it is about.</param>
/// <param name="Position">The position's name, "head", or empty.</param>
/// <param name="Text">What was said.</param>
/// <param name="IsBad">True for a finding that is out of spec.</param>
/// <param name="By">Who said it.</param>
/// <param name="Why">Why, of a decision: the note made at it, and the result that led to it; empty when none was given.</param>
public sealed record Said(string About, string Position, string Text, bool IsBad, Stamped By, string Why = "");
