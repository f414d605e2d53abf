namespace ProcRunner.Tui.Drawing;

/// <summary>The characters that pictures are drawn with, for terminals with and without UTF-8.</summary>
/// <param name="Full">A full block, for large digits and metal.</param>
/// <param name="Removed">Metal that is gone.</param>
/// <param name="Line">A level line.</param>
/// <param name="Upright">An upright line.</param>
/// <param name="Degree">The degree sign.</param>
/// <param name="PlusMinus">The plus-or-minus sign.</param>
internal sealed record Glyphs(char Full, char Removed, char Line, char Upright, string Degree, string PlusMinus)
{
    /// <summary>For a UTF-8 terminal.</summary>
    public static Glyphs Utf8 { get; } = new('\u2588', '\u2591', '\u2500', '\u2502', "\u00b0", "\u00b1");

    /// <summary>For every other.</summary>
    public static Glyphs Ascii { get; } = new('#', ':', '-', '|', " deg", "+/-");
}
