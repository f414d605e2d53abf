namespace ProcRunner.Procedures;

/// <summary>Something that readings rest on and that work can move: the deck, a guide's axis, the machine's set-up.</summary>
/// <param name="Name">Name, unique among data and characteristics.</param>
/// <param name="OfHead">True for one on the head, false for one a position.</param>
/// <param name="Meaning">What it is, in words.</param>
public sealed record Datum(string Name, bool OfHead, string Meaning);
