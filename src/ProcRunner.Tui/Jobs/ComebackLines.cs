using System.Globalization;
using ProcRunner.Quantities;
using ProcRunner.Runs;

namespace ProcRunner.Tui.Jobs;

/// <summary>A comeback in lines for a person.</summary>
internal static class ComebackLines
{
    private const int MostNear = 3;

    // Left-aligned; together with a window they fit 78 columns.
    private const int PositionWidth = -5;
    private const int NameWidth = -19;
    private const int ValueWidth = -11;

    /// <summary>The lines.</summary>
    /// <param name="earlier">The earlier job's stamp.</param>
    /// <param name="built">The earlier job.</param>
    /// <param name="found">The job that was opened against it.</param>
    public static IEnumerable<string> Of(string earlier, RunState built, RunState found)
    {
        Comeback comeback = new(built, found);
        Comeback.Nearness[] near = [.. comeback.Nearest.Take(MostNear)];
        string standing = JobProjection.StandingWord(built.Standing);
        yield return $"== As {earlier} went out ({standing}), beside how it came back ==";
        if (near.Length > 0)
        {
            yield return "nearest to a limit when it went out:";
            foreach (Comeback.Nearness one in near)
            {
                string share = (one.Share * 100).ToString("0", CultureInfo.InvariantCulture);
                yield return $"  {one.Row.Position} {one.Row.Name} {one.Row.Built}: {one.Left} from {one.Limit} ({share} % of the room left)";
            }
        }

        yield return "";
        yield return $"{"", PositionWidth}{"reading", NameWidth}{"as built", ValueWidth}{"as found", ValueWidth}{"change", ValueWidth}built to";
        foreach (Comeback.Row row in comeback.Rows)
        {
            string name = row.Name.Length < -NameWidth ? row.Name : row.Name[..(-NameWidth - 4)] + "...";
            yield return $"{row.Position, PositionWidth}{name, NameWidth}{Shown(row.Built), ValueWidth}{Shown(row.Found), ValueWidth}{Signed(row.Wear), ValueWidth}{Window(row.Limits)}{(row.IsPast ? " PAST" : "")}".TrimEnd();
        }

        yield return "";
        yield return "replaced then:";
        string[] replaced = [.. comeback.Replaced.Select(p => Part(built, p))];
        foreach (string part in replaced.DefaultIfEmpty("  nothing"))
        {
            yield return part;
        }

        yield return "not replaced then:";
        string[] kept =
        [
            .. comeback
                .Kept.GroupBy(k => k.Part)
                .Select(g => $"  {g.Key}: {string.Join(", ", g.Select(k => k.Position))}"),
        ];
        foreach (string part in kept.DefaultIfEmpty("  nothing: all that could be was"))
        {
            yield return part;
        }
    }

    private static string Part(RunState built, RunEvent.PartFitted part) =>
        $"  {built.Plan.PositionName(part.At.Position), -5} {part.Part} {part.Number}, lot {part.Lot}";

    private static string Window(Judgement limits) =>
        limits switch
        {
            { Low: { } low, High: { } high } => $"{Figure(low)} to {Figure(high)}",
            { High: { } high } => $"at most {Figure(high)}",
            { Low: { } low } => $"at least {Figure(low)}",
            _ => "",
        };

    private static string Figure(Quantity quantity) => quantity.Value.ToString(CultureInfo.InvariantCulture);

    private static string Shown(Quantity? value) => value?.ToString() ?? "not yet";

    private static string Signed(Quantity? change) =>
        change is not { } by ? ""
        : by.Value > 0 ? $"+{by}"
        : by.ToString();
}
