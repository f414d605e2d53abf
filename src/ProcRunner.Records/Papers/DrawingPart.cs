using ProcRunner.Procedures;
using ProcRunner.Records.Drawings;

namespace ProcRunner.Records.Papers;

/// <summary>The charts, for who looks rather than reads.</summary>
internal static class DrawingPart
{
    private static readonly (string Role, string Title, string Grows, bool FromZero)[] Ranges =
    [
        (RecordRoles.Recession, "Recession by position against its window", "deeper", false),
        (RecordRoles.SeatRunout, "Seat runout by position against its limit", "more runout", true),
        (RecordRoles.LoadClosed, "Spring load with the valve closed", "stronger", false),
        (RecordRoles.LoadOpen, "Spring load with the valve open", "stronger", false),
    ];

    /// <summary>Its pieces.</summary>
    public static IEnumerable<Block> Of(BuildRecord record)
    {
        (string Role, IReadOnlyList<Drawing> Drawings)[] drawings =
        [
            .. Ranges.Select(r => (r.Role, RangeChart.Of(r.Title, r.Grows, ValuesOf(record, r.Role), r.FromZero))),
            (RecordRoles.DeckThickness, OrNone(DeckMap.OfThickness(record.Shown(RecordRoles.DeckThickness)))),
            (RecordRoles.Flatness, OrNone(DeckMap.OfFlatness(record.Shown(RecordRoles.Flatness)))),
        ];
        IReadOnlyList<Drawing> plans = HeadPlan.Of(record);
        yield return new Block.Heading(2, "Drawings");
        foreach (
            Drawing drawing in (HeadPlan.IsForTheFront(plans) ? [] : plans).Concat(drawings.SelectMany(d => d.Drawings))
        )
        {
            yield return new Block.Picture(drawing);
        }

        string[] missing =
        [
            .. HeadPlan.Roles.Where(r => record.AllShown(r).Count == 0),
            .. drawings.Where(d => d.Drawings.Count == 0).Select(d => d.Role),
        ];
        if (missing.Length > 0)
        {
            yield return new Block.Paragraph(
                $"Not drawn: {string.Join("; ", missing.Distinct().Select(r => $"{r} ({Why(record, r)})"))}.",
                IsQuiet: true
            );
        }
    }

    private static IReadOnlyList<Drawing> OrNone(Drawing? drawing) => drawing is null ? [] : [drawing];

    // A drawing that is missing without a word would pass for one that nobody wanted.
    private static string Why(BuildRecord record, string role) =>
        record.Plan.Procedure.ValueShownAs(role) is not { } name ? "the procedure has no such value"
        : record.AllShown(role).Count == 0 ? $"{(name == role ? "" : $"{name} was ")}not measured"
        : "measured at one place only";

    private static PlottedValue[] ValuesOf(BuildRecord record, string role) =>
        [.. record.AllShown(role).Select(PlottedValue.Of)];
}
