using ProcRunner.Records.Drawings;

namespace ProcRunner.Records.Papers;

/// <summary>The charts, for who looks rather than reads.</summary>
internal static class DrawingPart
{
    private static readonly (string Name, string Title, string Grows, bool FromZero)[] Ranges =
    [
        ("recession", "Recession by position against its window", "deeper", false),
        ("seat runout", "Seat runout by position against its limit", "more runout", true),
        ("spring load closed", "Spring load with the valve closed", "stronger", false),
        ("spring load open", "Spring load with the valve open", "stronger", false),
    ];

    /// <summary>Its pieces.</summary>
    public static IEnumerable<Block> Of(BuildRecord record)
    {
        Drawing[] drawings =
        [
            .. Ranges
                .Select(r => RangeChart.Of(r.Title, r.Grows, ValuesOf(record, r.Name), r.FromZero))
                .Append(DeckMap.OfThickness(record.Find("deck thickness", "head")))
                .Append(DeckMap.OfFlatness(record.Find("flatness", "head")))
                .OfType<Drawing>(),
        ];
        return drawings.Length == 0
            ? []
            : [new Block.Heading(2, "Drawings"), .. drawings.Select(d => new Block.Picture(d))];
    }

    private static PlottedValue[] ValuesOf(BuildRecord record, string name) =>
        [.. record.Values.Where(v => v.Name == name).Select(PlottedValue.Of)];
}
