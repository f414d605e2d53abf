namespace ProcRunner.Records.Drawings;

/// <summary>A colour by what it is for. None of them is the only thing that tells something: words and marks do.</summary>
internal enum Tone
{
    /// <summary>Nothing is drawn.</summary>
    None,

    /// <summary>Text and lines.</summary>
    Ink,

    /// <summary>Text beside the main thing.</summary>
    Quiet,

    /// <summary>Thin lines of tables and frames.</summary>
    Rule,

    /// <summary>The paper.</summary>
    Paper,

    /// <summary>Ground behind headings of tables, and castings.</summary>
    Ground,

    /// <summary>The span of a window.</summary>
    Span,

    /// <summary>A value within its limits.</summary>
    Value,

    /// <summary>How it was found.</summary>
    Found,

    /// <summary>Out of spec, or out of spec and conceded.</summary>
    Attention,

    /// <summary>Ground behind what wants attention.</summary>
    AttentionGround,
}
