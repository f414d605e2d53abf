using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Screens.Parts;

/// <summary>A paragraph of a page.</summary>
/// <param name="Text">Its words; however long, it is wrapped.</param>
/// <param name="Ink">What it means.</param>
/// <param name="Indent">Columns before it.</param>
/// <param name="Label">What stands before it in a column of its own; empty for nothing.</param>
/// <param name="Heading">The row of headings that it stands under, said again on each page; empty for none.</param>
internal sealed record TextLine(
    string Text,
    Ink Ink = Ink.Plain,
    int Indent = 0,
    string Label = "",
    string Heading = ""
);
