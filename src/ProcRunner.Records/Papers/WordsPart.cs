namespace ProcRunner.Records.Papers;

/// <summary>What the words of the trade mean that stand in this record, for who isn't of the trade.</summary>
internal static class WordsPart
{
    // k = 2: JCGM 100:2008 (GUM), G.1.3 and table G.1.
    private static readonly (string Word, string Meaning)[] All =
    [
        ("as found", "as it was measured before any work"),
        ("aim", "the number that was worked to, between low and high"),
        ("concession", "a lead of the shop signed that a result outside its limits is used as it is, with the reason"),
        ("readout", "the number the machine shows for how far its cutter has gone since it was set to zero"),
        ("deck", "the flat face of the head that meets the engine block"),
        ("skim", "a thin cut over the deck that makes it flat again"),
        ("recession", "how far the closed valve lies below the deck"),
        ("valve guide", "the sleeve that the stem of the valve slides in"),
        ("clearance", "the gap between a stem and its guide"),
        ("seat", "the ring-shaped face in the head that the closed valve rests on"),
        ("insert", "a ring pressed into the head, in which the seat is cut"),
        ("counterbore", "the hole that an insert is pressed into"),
        ("set-back", "how far the top of an insert lies below the face round its counterbore"),
        ("clean-up cut", "what has to come off the deck until nothing of the old face is left"),
        ("peen", "strike the head's metal over the edge of an insert, so that it can't come out"),
        ("taper", "how much wider one end of a bore is than the other"),
        ("out of round", "how much wider a bore is one way than across"),
        ("reface", "grind the valve's own sealing face true"),
        ("margin", "what is left of the valve's edge above its sealing face"),
        ("runout", "how far something wanders round its axis in one turn"),
        ("installed height", "the height that the spring has to stand in with the valve closed"),
        ("shim", "a thin ring under a spring that sets its height"),
        ("coil-bind", "a spring pressed until its coils touch, which it mustn't be"),
        ("protrusion", "how far something stands out from the deck"),
        ("pre-chamber", "a small chamber in the head in which burning begins"),
        ("fire-ring", "the metal ring of the gasket round a cylinder"),
        ("stem height", "how far the end of the valve's stem stands above the spring's seat"),
        ("relief", "metal cut away round a seat, so that the gas flows past the valve freely"),
        ("wedge", "how much thicker the head is at one end than at the other"),
        ("pilot", "the rod in the valve guide that the cutter turns on"),
        (
            "zero void",
            "a zero of the readout that no longer counted, as the tool or the work had moved; it was set anew"
        ),
        ("digest", "a number worked out from a text, by which any change of the text shows"),
        ("inHg", "inches of mercury, a unit of vacuum"),
        ("\u00b5in", "millionths of an inch, the unit of roughness"),
        ("lbf", "pounds of force"),
        ("k = 2", "an uncertainty taken twice as wide, so that it holds about nineteen times in twenty"),
        (
            "entry",
            "one line of what was written down at the machine, numbered as it came; none can be changed without its being seen"
        ),
        ("lot", "the batch that a part came from, as its box says"),
        ("rule of thumb", "a limit of common practice that no maker and no standard gave"),
    ];

    /// <summary>Its pieces: only words that stand in the rest.</summary>
    /// <param name="rest">All else of the record.</param>
    public static IEnumerable<Block> Of(IReadOnlyList<Block> rest)
    {
        string text = string.Join('\n', rest.SelectMany(Texts));
        (string Word, string Meaning)[] used =
        [
            .. All.Where(w => text.Contains(w.Word, StringComparison.OrdinalIgnoreCase)),
        ];
        if (used.Length > 0)
        {
            yield return new Block.Heading(2, "Words of the trade in this record");
            yield return new Block.Table(
                "Words of the trade and what they mean",
                [("word", 2), ("meaning", 8)],
                [.. used.Select(w => new Row([w.Word, w.Meaning]))]
            );
        }
    }

    private static IEnumerable<string> Texts(Block block) =>
        block switch
        {
            Block.Heading b => [b.Text],
            Block.Paragraph b => [b.Text],
            Block.Bullets b => b.Texts,
            Block.Notice b => b.Texts,
            Block.Table b => b.Rows.SelectMany(r => r.Cells).Concat(b.Columns.Select(c => c.Name)),
            _ => [],
        };
}
