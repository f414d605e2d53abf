namespace ProcRunner.Runs;

/// <summary>A datum, a reading, a decision or a limit that moved, and where.</summary>
/// <param name="Name">What: as formulas and <c>rests-on</c> name it; decisions as <c>decided.</c>, findings as <c>found.</c>, limits as <c>spec.</c>.</param>
/// <param name="Position">The position, or <see cref="At.Head"/>.</param>
/// <param name="FirstKnown">
/// True when it had no value before: then only results worked out without it no longer stand, nothing that rests on it.
/// </param>
internal readonly record struct MovedName(string Name, int Position, bool FirstKnown = false);
