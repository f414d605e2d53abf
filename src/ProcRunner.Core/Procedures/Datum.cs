namespace ProcRunner.Procedures;

/// <summary>Something that readings rest on and that work can move: the deck, a guide's axis, the machine's set-up.</summary>
/// <param name="Name">Name, unique among data and characteristics.</param>
/// <param name="OfHead">True for one on the head, false for one a position.</param>
/// <param name="Meaning">What it is, in words.</param>
public sealed record Datum(string Name, bool OfHead, string Meaning);

/// <summary>How far a move of a datum reaches.</summary>
public enum Reach
{
    /// <summary>The position worked at; for a datum of the head, the head.</summary>
    Here,

    /// <summary>The positions next to it in the order of the head, and itself not.</summary>
    Neighbours,

    /// <summary>Every position.</summary>
    Everywhere,
}

/// <summary>A move of a datum or of a characteristic.</summary>
/// <param name="Of">What moves.</param>
/// <param name="Reach">Where.</param>
public sealed record Move(string Of, Reach Reach);

/// <summary>Something that the operator reports at any time: a changed cutter edge, the readout lost power.</summary>
/// <param name="Name">What happened, in the operator's words.</param>
/// <param name="Moves">What it moves.</param>
/// <param name="Why">Why that matters.</param>
public sealed record Change(string Name, IReadOnlyList<Move> Moves, string Why);

/// <summary>A shop's setting that formulas read as <c>[setting.name]</c>.</summary>
/// <param name="Name">Name.</param>
/// <param name="Value">The figure.</param>
/// <param name="Origin">Who says so.</param>
public sealed record Setting(string Name, Quantities.Quantity Value, Origin Origin);

/// <summary>A caution with its signal word (ISO 3864 and ANSI Z535 grade them).</summary>
/// <param name="Word">DANGER, WARNING, CAUTION or NOTICE.</param>
/// <param name="Text">What to mind.</param>
public sealed record Caution(string Word, string Text);
