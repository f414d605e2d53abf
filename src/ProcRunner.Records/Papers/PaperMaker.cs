namespace ProcRunner.Records.Papers;

/// <summary>Sets a record: one page that a customer understands, then the detail.</summary>
internal static class PaperMaker
{
    /// <summary>The paper.</summary>
    public static Paper Of(BuildRecord record)
    {
        Block[] front = [.. Warnings(record), .. FrontPage.Of(record)];
        Block[] told =
        [
            .. OutOfSpecPart.Of(record),
            .. ComebackPart.Of(record),
            .. HistoryPart.Of(record),
            .. DrawingPart.Of(record),
            .. WorkPart.Of(record),
            .. ValuePart.Said(record),
        ];
        Block[] lookedUp =
        [
            .. WorkPart.LookedUp(record),
            .. ValuePart.Of(record),
            .. OutOfSpecPart.LookedUp(record),
            .. HowPart.Of(record),
        ];
        Block[] detail =
        [
            .. told,
            new Block.Appendix(),
            .. lookedUp,
            .. WordsPart.Of([.. front, .. told, .. lookedUp]),
            .. ProofPart.Of(record),
        ];
        string[] parts = [.. detail.OfType<Block.Heading>().Where(h => h.Level == 2).Select(h => h.Text)];
        return new Paper(
            $"Build record {record.Job.Stamp}",
            record.Plan.Head.Title,
            $"Build record {record.Job.Stamp}, {Ended(record)}{Code(record)}",
            record.Job.Practice ? "PRACTICE" : "",
            [.. front, new Block.NewPage(), new Block.Contents(parts), .. detail]
        );
    }

    private static IEnumerable<Block> Warnings(BuildRecord record)
    {
        if (record.Job.Practice)
        {
            yield return new Block.Notice(
                "PRACTICE",
                [
                    "This is a practice head. Nothing in this record was built for a customer, and no sign-off in it proves anything.",
                ],
                NeedsAttention: true
            );
        }

        if (record.IsDemo)
        {
            yield return new Block.Notice(
                "DEMO",
                ["This is the demo shop. All in it is invented; its PINs are public, so its sign-offs prove nothing."],
                NeedsAttention: true
            );
        }

        if (!record.IsClosed)
        {
            yield return new Block.Notice(
                "NOT RELEASED",
                [
                    $"The work is not finished: the job is {record.StandingWord}{(record.StandingReason.Length > 0 ? $" ({record.StandingReason})" : "")}. What follows is how it stood at entry {Number(record.Last.Entry)}, {record.Last.Time}. Do not fit this head.",
                ],
                NeedsAttention: true
            );
        }

        if (record.Standing == Runs.JobStanding.Scrapped)
        {
            yield return new Block.Notice(
                "SCRAPPED",
                [$"This head was given up: {record.StandingReason}. Do not fit it."],
                NeedsAttention: true
            );
        }
    }

    private static string Ended(BuildRecord record) =>
        record.IsClosed ? $"{record.StandingWord} {record.Last.Time}" : $"NOT RELEASED, as of {record.Last.Time}";

    private static string Code(BuildRecord record) => record.Proof.Code is { } code ? $", proof code {code}" : "";

    /// <summary>A whole number as text.</summary>
    public static string Number(long number) => Telling.Number(number);

    /// <summary>Who and when, with the entry: <c>R. Vale, 2026-03-01 14:05, entry 12</c>.</summary>
    public static string Who(Stamped by) => $"{by.Person}, {by.Time}, entry {Number(by.Entry)}";

    /// <summary>Who, with the entry: <c>R. Vale, entry 12</c>; when stands with the stages.</summary>
    public static string WhoShort(Stamped by) => $"{by.Person}, entry {Number(by.Entry)}";

    /// <summary>Several entries: <c>R. Vale, entries 12, 14 to 17</c>.</summary>
    public static string Entries(IReadOnlyList<Stamped> by) =>
        by.Count == 1
            ? WhoShort(by[0])
            : $"{string.Join(", ", by.Select(b => b.Person).Distinct())}, entries {Ranges([.. by.Select(b => b.Entry)])}";

    /// <summary>Places for a reader: <c>every valve</c>, or each by its name.</summary>
    public static string Places(IReadOnlyList<string> positions, BuildRecord record) =>
        positions.Count > 1 && positions.Distinct().Count() == record.Plan.Positions.Count
            ? "every valve"
            : string.Join(", ", positions);

    private static string Ranges(IReadOnlyList<long> entries)
    {
        List<string> ranges = [];
        for (int from = 0, to; from < entries.Count; from = to + 1)
        {
            for (to = from; to + 1 < entries.Count && entries[to + 1] == entries[to] + 1; to++) { }

            ranges.Add(
                to - from < 2
                    ? string.Join(", ", entries.Skip(from).Take(to - from + 1).Select(Number))
                    : $"{Number(entries[from])} to {Number(entries[to])}"
            );
        }

        return string.Join(", ", ranges);
    }

    /// <summary>A place for a reader: nothing for the head's own.</summary>
    public static string At(string position) => position is "head" or "" ? "" : $" {position}";
}
