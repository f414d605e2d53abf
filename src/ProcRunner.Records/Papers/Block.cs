using ProcRunner.Records.Drawings;

namespace ProcRunner.Records.Papers;

/// <summary>A piece of a record as people read it. The page and the paper are written from the same pieces.</summary>
internal abstract record Block
{
    private Block() { }

    /// <summary>A heading; level 2 begins a part, level 3 a piece of it.</summary>
    public sealed record Heading(int Level, string Text) : Block;

    /// <summary>A paragraph.</summary>
    public sealed record Paragraph(string Text, bool IsQuiet = false) : Block;

    /// <summary>Labels with what stands beside them.</summary>
    public sealed record Facts(IReadOnlyList<(string Label, string Text)> Items) : Block;

    /// <summary>A table; the first cell of a row is its heading.</summary>
    /// <param name="Caption">What it holds.</param>
    /// <param name="Columns">Headings with their share of the width.</param>
    /// <param name="Rows">The rows.</param>
    public sealed record Table(string Caption, IReadOnlyList<(string Name, int Share)> Columns, IReadOnlyList<Row> Rows)
        : Block;

    /// <summary>A list.</summary>
    public sealed record Bullets(IReadOnlyList<string> Texts, bool IsNumbered = false) : Block;

    /// <summary>Something that stands out, with its own heading.</summary>
    public sealed record Notice(string Title, IReadOnlyList<string> Texts, bool NeedsAttention) : Block;

    /// <summary>A drawing with its title.</summary>
    public sealed record Picture(Drawing Drawing) : Block;

    /// <summary>The proof code, large, with its QR code beside it.</summary>
    public sealed record Code(string Text, Drawing Drawing, string Words) : Block;

    /// <summary>On paper a new page begins.</summary>
    public sealed record NewPage : Block;

    /// <summary>The parts, in their order; on paper with their pages.</summary>
    public sealed record Contents(IReadOnlyList<string> Parts) : Block;

    /// <summary>From here on stands what is looked up rather than read; on paper it is set closer.</summary>
    public sealed record Appendix : Block;
}
