using System.Globalization;
using ProcRunner.Quantities;
using ProcRunner.Records.History;
using ProcRunner.Runs;
using ProcRunner.Trail;

namespace ProcRunner.Tui.Jobs;

/// <summary>A comeback in lines for a person: what matters first, then every value that is known of both.</summary>
/// <param name="built">The earlier job.</param>
/// <param name="found">The job that was opened against it.</param>
/// <param name="width">Columns.</param>
internal sealed class ComebackLines(JobReading built, JobReading found, int width)
{
    private const int MostNear = 3;
    private const int LabelWidth = 8;
    private const int CellWidth = 8;
    private readonly Comeback _comeback = new(built.State, found.State);

    /// <summary>The lines.</summary>
    public IEnumerable<string> All() =>
        [
            Heading(),
            .. Named("nearest to a limit when it went out:", _comeback.Nearest.GroupBy(n => n.Row.Name).Select(Near)),
            .. Named("most of its room used up since:", _comeback.MostUsed.GroupBy(r => r.Name).Select(Used)),
            "",
            .. Tables(),
            .. NotAgain(),
            "",
            "replaced then:",
            .. Replaced().DefaultIfEmpty("  nothing"),
            "not replaced then:",
            .. _comeback
                .Kept.GroupBy(k => k.Part)
                .Select(g => $"  {g.Key}: {string.Join(", ", g.Select(k => k.Position))}")
                .DefaultIfEmpty("  nothing: all that could be was"),
        ];

    private string Heading()
    {
        TrailEntry last = built.Entries[^1].Entry;
        TrailEntry first = found.Entries[0].Entry;
        int days = (int)(first.At - last.At).TotalDays;
        string after = days == 1 ? "after a day" : $"after {Number(days)} days";
        return $"== {built.State.Job!.Stamp}: {JobProjection.StandingWord(built.State.Standing)} {Day(last)}, back as {found.State.Job!.Stamp} {Day(first)}, {after} ==";
    }

    private static IEnumerable<string> Named(string title, IEnumerable<string> lines)
    {
        string[] first = [.. lines.Take(MostNear)];
        return first.Length == 0 ? [] : [title, .. first];
    }

    // Of each characteristic the nearest, with every position that is just as near.
    private static string Near(IGrouping<string, Comeback.Nearness> of)
    {
        Comeback.Nearness one = of.First();
        string where = string.Join(", ", of.Where(n => n.Share <= one.Share).Select(n => n.Row.Position));
        string share = $"{Percent(one.Share)} of {(one.IsOfWindow ? "its window" : "it")}";
        return $"  {of.Key} {one.Row.Built} at {where}: {one.Left} from its limit, {one.Limit} ({share})";
    }

    private static string Used(IGrouping<string, Comeback.Row> of)
    {
        Comeback.Row one = of.First();
        return $"  {of.Key} at {one.Position}: {one.Built} built, {one.Found} found, {Percent(one.Used!.Value)} of what was left to its limit{(one.IsPast ? ": PAST" : "")}";
    }

    // What is known of both, a characteristic after the other, so that positions stand beside each other.
    private IEnumerable<string> Tables()
    {
        Comeback.Row[] known = [.. _comeback.Rows.Where(r => r.Found is not null)];
        if (known.Length == 0)
        {
            yield return "Nothing has been measured again yet.";
            yield break;
        }

        yield return "used: the part of what was left to the limit it went towards; PAST: outside it";
        int fits = Math.Max(1, (width - LabelWidth) / CellWidth);
        foreach (string line in OfHead([.. known.Where(IsOfHead)]))
        {
            yield return line;
        }

        foreach (IGrouping<string, Comeback.Row> of in known.Where(r => !IsOfHead(r)).GroupBy(r => r.Name))
        {
            Comeback.Row[] rows = [.. of];
            yield return "";
            yield return Titled(rows[0]) + BuiltTo(rows);
            foreach (Comeback.Row[] block in rows.Chunk(fits))
            {
                yield return Line("", block, r => r.Position);
                yield return Line("built", block, r => Figure(r.Built));
                yield return Line("found", block, r => Shown(r.Found, r.Built.Unit));
                yield return Line("change", block, r => Signed(r.Change));
                if (block.Any(r => r.Used is not null || r.IsPast))
                {
                    yield return Line("used", block, r => r.Used is { } used ? Percent(used) : "");
                    if (block.Any(r => r.IsPast))
                    {
                        yield return Line("", block, r => r.IsPast ? "PAST" : "");
                    }
                }
            }
        }
    }

    private bool IsOfHead(Comeback.Row row) => row.Position == built.State.Plan.PositionName(At.Head);

    private static IEnumerable<string> OfHead(Comeback.Row[] rows)
    {
        if (rows.Length == 0)
        {
            yield break;
        }

        int name = rows.Max(r => Titled(r).Length);
        string Cells(string of, string built, string found, string change, string used) =>
            $"{of.PadRight(name)} {built, CellWidth} {found, CellWidth} {change, CellWidth} {used, CellWidth}";
        yield return "";
        yield return $"{Cells("the head itself", "built", "found", "change", "used")}  built to";
        foreach (Comeback.Row row in rows)
        {
            string used = row.Used is { } part ? Percent(part) : "";
            string cells = Cells(
                Titled(row),
                Figure(row.Built),
                Shown(row.Found, row.Built.Unit),
                Signed(row.Change),
                used
            );
            yield return $"{cells}  {Window(row.Limits)}{(row.IsPast ? " PAST" : "")}".TrimEnd();
        }
    }

    private static string Line(string label, IEnumerable<Comeback.Row> rows, Func<Comeback.Row, string> cell) =>
        (
            "  "
            + label.PadRight(LabelWidth - 2)
            + string.Concat(rows.Select(r => " " + cell(r).PadLeft(CellWidth - 1)))
        ).TrimEnd();

    // Kinds of positions may be held to different limits.
    private static string BuiltTo(IEnumerable<Comeback.Row> rows)
    {
        (string Window, string Positions)[] windows =
        [
            .. rows.GroupBy(r => Window(r.Limits))
                .Where(g => g.Key.Length > 0)
                .Select(g => (g.Key, string.Join(" ", g.Select(r => r.Position)))),
        ];
        return windows switch
        {
            [] => "",
            [var all] => $"; built to {all.Window}",
            _ => $"; built to {string.Join(", ", windows.Select(w => $"{w.Window} at {w.Positions}"))}",
        };
    }

    private IEnumerable<string> NotAgain()
    {
        ILookup<string, Comeback.Row> all = _comeback.Rows.ToLookup(r => r.Name);
        string[] missing =
        [
            .. all.Where(of => of.Any(r => r.Found is null))
                .Select(of =>
                    of.All(r => r.Found is null)
                        ? of.Key
                        : $"{of.Key} at {string.Join(" ", of.Where(r => r.Found is null).Select(r => r.Position))}"
                ),
        ];
        return missing.Length == 0 ? [] : ["", $"not measured as found: {string.Join(", ", missing)}"];
    }

    private IEnumerable<string> Replaced() =>
        _comeback
            .Replaced.GroupBy(p => (p.Part, p.Number))
            .Select(g =>
                $"  {g.Key.Part} {g.Key.Number}: {string.Join(", ", g.Select(p => $"{built.State.Plan.PositionName(p.At.Position)} lot {p.Lot}"))}"
            );

    private static string Window(Judgement limits) =>
        limits switch
        {
            { Low: { } low, High: { } high } => $"{Figure(low)} to {Figure(high)}",
            { High: { } high } => $"at most {Figure(high)}",
            { Low: { } low } => $"at least {Figure(low)}",
            _ => "",
        };

    private static string Titled(Comeback.Row row) =>
        row.Built.Unit.Symbol.Length == 0 ? row.Name : $"{row.Name}, {row.Built.Unit.Symbol}";

    private static string Figure(Quantity quantity) => quantity.Value.ToString(CultureInfo.InvariantCulture);

    private static string Shown(Quantity? value, Unit unit) =>
        value is not { } known ? ""
        : known.Unit == unit ? Figure(known)
        : known.ToString();

    private static string Signed(Quantity? change) =>
        change is not { } by ? ""
        : by.Value > 0 ? $"+{Figure(by)}"
        : Figure(by);

    private static string Percent(double share) =>
        share > 9.99 ? ">999 %" : (share * 100).ToString("0", CultureInfo.InvariantCulture) + " %";

    private static string Day(TrailEntry entry) => JobListing.Minute(entry.At)[..10];

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
