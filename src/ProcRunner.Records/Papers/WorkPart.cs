using System.Globalization;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Records.Story;
using ProcRunner.Runs;
using ProcRunner.Shop;

namespace ProcRunner.Records.Papers;

/// <summary>Stages and sign-offs, parts, cuts, what is left, gauges and tools.</summary>
internal static class WorkPart
{
    /// <summary>Its pieces.</summary>
    public static IEnumerable<Block> Of(BuildRecord record) =>
        [.. Stages(record), .. Parts(record), .. Gauges(record), .. Tools(record)];

    /// <summary>Its pieces that are looked up: every cut, and what is left of everything.</summary>
    public static IEnumerable<Block> LookedUp(BuildRecord record) => [.. Left(record), .. Cuts(record)];

    private static IEnumerable<Block> Stages(BuildRecord record)
    {
        yield return new Block.Heading(2, "Stages and sign-offs");
        yield return new Block.Table(
            "Who worked in each stage and who signed it",
            [("stage", 2), ("measured and entered by", 3), ("from", 2), ("to", 2), ("signed", 6)],
            [
                .. record.Stages.Select(s => new Row([
                    s.Name,
                    string.Join(", ", s.People),
                    $"{s.First.Time}, entry {PaperMaker.Number(s.First.Entry)}",
                    $"{s.Last.Time}, entry {PaperMaker.Number(s.Last.Entry)}",
                    s.Marks.Count > 0 ? string.Join("; ", s.Marks.Select(Mark)) : "not signed",
                ])),
            ]
        );
    }

    private static string Mark(MarkTold told)
    {
        string beside = told.Mark.Beside is { } lead ? $" with {lead.Name} beside" : "";
        return $"{told.Mark.Meaning} by {told.Mark.Mark.Name}{beside}, {told.By.Time}, entry {PaperMaker.Number(told.By.Entry)}";
    }

    private static IEnumerable<Block> Parts(BuildRecord record)
    {
        yield return new Block.Heading(2, "Parts");
        if (record.Parts.Count == 0)
        {
            yield return new Block.Paragraph("No part was fitted.");
            yield break;
        }

        yield return new Block.Table(
            "Parts fitted, with numbers and lots",
            [("part", 3), ("at", 3), ("number", 3), ("lot", 3), ("", 2), ("by", 4)],
            [
                .. record
                    .Parts.GroupBy(p => (p.Part, p.Number, p.Lot, p.IsInPlace))
                    .Select(g => new Row([
                        g.Key.Part,
                        PaperMaker.Places([.. g.Select(p => p.Position)], record),
                        g.Key.Number,
                        g.Key.Lot,
                        g.Key.IsInPlace ? "in place" : "replaced again later",
                        PaperMaker.Entries([.. g.Select(p => p.By)]),
                    ])),
            ]
        );
    }

    private static IEnumerable<Block> Cuts(BuildRecord record)
    {
        if (record.Cuts.Count == 0)
        {
            yield break;
        }

        yield return new Block.Heading(2, "Cuts");
        yield return new Block.Table(
            "Every cut from its zero point: what the readout showed after each pass and what was measured",
            [
                ("cut", 3),
                ("at", 1),
                ("zero: readout, measured there", 3),
                ("readout after each pass", 3),
                ("measured", 3),
                ("ended", 2),
                ("by", 3),
            ],
            [
                .. record.Cuts.Select(c => new Row(
                    [
                        c.What,
                        c.Position,
                        $"{c.Zero.Set}, {c.Zero.Measured}",
                        Numbers(c.Passes),
                        Numbers(c.Measured),
                        c.Ended.Length > 0 ? c.Ended : "not ended",
                        PaperMaker.WhoShort(c.By),
                    ],
                    NeedsAttention: c.Ended == "out of spec"
                )),
            ]
        );
    }

    private static string Numbers(IReadOnlyList<Quantity> values) =>
        values.Count == 0
            ? "none"
            : $"{string.Join("; ", values.Select(v => v.Value.ToString(CultureInfo.InvariantCulture)))} {values[0].Unit.Symbol}";

    private static IEnumerable<Block> Left(BuildRecord record)
    {
        if (record.Left.Count == 0)
        {
            yield break;
        }

        yield return new Block.Heading(2, "What is left");
        yield return new Block.Paragraph(
            "How much each may still change before its own limit, worked out here from values above and below. What several lines limit, the least of them limits."
        );
        yield return new Block.Table(
            "What is left, with its working",
            [("reading", 3), ("at", 1), ("left", 2), ("worked out as", 4), ("meaning", 5), ("limit from", 3)],
            [
                .. record.Left.Select(l => new Row(
                    [l.What, l.Position, l.Left.ToDisplay(), l.Working, l.Words, l.Origin],
                    NeedsAttention: l.Left.Value < 0
                )),
            ]
        );
    }

    private static IEnumerable<Block> Gauges(BuildRecord record)
    {
        yield return new Block.Heading(2, "Gauges, pilots and cutters");
        if (record.Gauges.Count == 0)
        {
            yield return new Block.Paragraph("No gauge was kept.");
            yield break;
        }

        yield return new Block.Table(
            "Gauges that were read, as the shop book knew them at the last entry",
            [
                ("gauge", 1),
                ("name", 5),
                ("kind", 2),
                ("shows steps of", 2),
                ("uncertainty (k = 2)", 2),
                ("calibrated until", 2),
                ("readings", 2),
            ],
            [.. record.Gauges.Select(Gauge)]
        );
    }

    private static Row Gauge(GaugeTold told)
    {
        string readings = PaperMaker.Number(told.Readings);
        return told.Gauge is not { } gauge
            ? new Row([told.Id, "not in the shop book", "", "", "", "", readings], NeedsAttention: true)
            : new Row([
                gauge.Id,
                gauge.Name,
                gauge.Kind,
                gauge.Resolution.ToString(),
                gauge.Uncertainty.ToString(),
                Until(gauge),
                readings,
            ]);
    }

    /// <summary>Until when a gauge is calibrated.</summary>
    public static string Until(Gauge gauge) =>
        gauge.CalibratedUntil?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "no date kept";

    private static IEnumerable<Block> Tools(BuildRecord record)
    {
        yield return record.Tools.Count == 0
            ? new Block.Paragraph("No pilot or cutter was noted.")
            : new Block.Table(
                "Pilots and cutters as they were noted, and their changes",
                [("where", 4), ("at", 2), ("noted", 5), ("by", 4)],
                [.. Said(record.Tools, record)]
            );
    }

    /// <summary>Rows of what was said; what was said alike of several positions stands once.</summary>
    public static IEnumerable<Row> Said(IReadOnlyList<Said> said, BuildRecord record, string ifBad = "") =>
        said.GroupBy(s => (s.About, s.Text, s.IsBad))
            .Select(g => new Row(
                [
                    g.Key.About,
                    PaperMaker.Places([.. g.Select(s => s.Position)], record),
                    g.Key.IsBad ? g.Key.Text + ifBad : g.Key.Text,
                    PaperMaker.Entries([.. g.Select(s => s.By)]),
                ],
                g.Key.IsBad
            ));

    /// <summary>True for a limit that is a rule of thumb.</summary>
    public static string OriginOf(Judgement judged) =>
        judged.Origin.Contains(OriginWords.Of(Origin.RuleOfThumb), StringComparison.Ordinal)
            ? $"RULE OF THUMB{judged.Origin[OriginWords.Of(Origin.RuleOfThumb).Length..]}"
            : judged.Origin;
}
