using System.Globalization;
using ProcRunner.Records.History;

namespace ProcRunner.Records.Papers;

/// <summary>A head that came back: how it went out beside how it came, and how much of what was left to each limit is used up.</summary>
internal static class ComebackPart
{
    private const int MostTold = 3;

    /// <summary>Its pieces; none for a head that didn't come back.</summary>
    public static IEnumerable<Block> Of(BuildRecord record)
    {
        if (record.EarlierStamp.Length == 0)
        {
            yield break;
        }

        yield return new Block.Heading(2, "Since the earlier job");
        Comeback.Row[] known = [.. record.Comeback?.Rows.Where(r => r.Found is not null) ?? []];
        if (record.Comeback is not { } comeback || known.Length == 0)
        {
            yield return new Block.Paragraph(
                record.Comeback is null
                    ? $"This head came back from the job {record.EarlierStamp}. Its trail isn't in this store, or doesn't hold, so that nothing can be set beside it."
                    : $"This head came back from the job {record.EarlierStamp}. Nothing of it has been measured again yet as it was found."
            );
            yield break;
        }

        yield return new Block.Paragraph(
            $"This head came back from the job {record.EarlierStamp}. What it went out with then stands beside what it was found with at this teardown. Used: the part of what was left to the limit that a value went towards; 100 % is on the limit, more is past it."
        );
        yield return new Block.Facts([.. Short(comeback, record)]);
        yield return new Block.Table(
            $"As it went out from {record.EarlierStamp}, and as it came back",
            [
                ("reading", 3),
                ("at", 1),
                ("went out with", 2),
                ("found", 2),
                ("change", 2),
                ("used", 2),
                ("held to then", 4),
            ],
            [.. known.Where(r => !IsUnchanged(r)).Select(Row)]
        );
    }

    /// <summary>The same in a line: what used up most of its room; empty when nothing is known.</summary>
    public static string MostUsed(Comeback comeback) =>
        string.Join(
            "; ",
            comeback
                .MostUsed.GroupBy(r => r.Name)
                .Select(g => g.First())
                .Take(MostTold)
                .Select(r =>
                    $"{r.Name} at {r.Position} {Percent(r)} of what was left ({r.Built.ToDisplay()} then, {r.Found!.Value.ToDisplay()} found{(r.IsPast ? ", past its limit" : "")})"
                )
        );

    /// <summary>A part in hundredths, rounded; empty where it isn't known.</summary>
    public static string Percent(Comeback.Row row) =>
        row.Used switch
        {
            null => "",
            > 9.99 => "more than 999 %",
            { } used => (used * 100).ToString("0", CultureInfo.InvariantCulture) + " %",
        };

    private static IEnumerable<(string Label, string Text)> Short(Comeback comeback, BuildRecord record)
    {
        if (MostUsed(comeback) is { Length: > 0 } used)
        {
            yield return ("Most used up", used);
        }

        if (comeback.Nearest.FirstOrDefault() is { } near)
        {
            yield return (
                "Nearest to a limit when it went out",
                $"{near.Row.Name} at {near.Row.Position}: {near.Row.Built.ToDisplay()}, {near.Left.ToDisplay()} from its limit {near.Limit.ToDisplay()}"
            );
        }

        string[] unchanged =
        [
            .. comeback
                .Rows.Where(r => r.Found is not null && IsUnchanged(r))
                .GroupBy(r => r.Name)
                .Select(g => $"{g.Key} ({PaperMaker.Places([.. g.Select(r => r.Position)], record)})"),
        ];
        if (unchanged.Length > 0)
        {
            yield return ("Found as it went out", string.Join("; ", unchanged));
        }

        yield return (
            "Replaced then",
            string.Join(
                "; ",
                comeback
                    .Replaced.GroupBy(p => p.Part)
                    .Select(g =>
                        $"{g.Key} ({PaperMaker.Places([.. g.Select(p => record.Plan.PositionName(p.At.Position))], record)})"
                    )
                    .DefaultIfEmpty("nothing")
            )
        );
        yield return (
            "Not replaced then",
            string.Join(
                "; ",
                comeback
                    .Kept.GroupBy(k => k.Part)
                    .Select(g => $"{g.Key} ({PaperMaker.Places([.. g.Select(k => k.Position)], record)})")
                    .DefaultIfEmpty("nothing: all that could be was")
            )
        );
    }

    private static bool IsUnchanged(Comeback.Row row) => row.Change is { Value: 0 };

    private static Row Row(Comeback.Row row) =>
        new(
            [
                row.Name,
                row.Position,
                row.Built.ToDisplay(),
                row.Found!.Value.ToDisplay(),
                row.Change is { } change ? (change.Value > 0 ? "+" : "") + change.ToDisplay() : "",
                row.IsPast ? $"{Percent(row)} PAST ITS LIMIT".Trim() : Percent(row),
                Telling.Window(row.Limits),
            ],
            NeedsAttention: row.IsPast
        );
}
