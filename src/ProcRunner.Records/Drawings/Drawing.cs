namespace ProcRunner.Records.Drawings;

/// <summary>A picture as a list of shapes, drawn in this order; the page and the paper draw the same list.</summary>
/// <param name="Title">What it shows.</param>
/// <param name="Alternative">The same in words, with its numbers, for whoever doesn't see it.</param>
/// <param name="Width">In points.</param>
/// <param name="Height">In points.</param>
/// <param name="Shapes">The shapes.</param>
internal sealed record Drawing(
    string Title,
    string Alternative,
    double Width,
    double Height,
    IReadOnlyList<Shape> Shapes
);
