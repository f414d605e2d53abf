using System.Globalization;
using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Trail;
using ProcRunner.Tui.Jobs;

namespace ProcRunner.Tui.Commands;

/// <summary><c>verify --recompute</c>: where today's program would decide otherwise. It says nothing against a trail.</summary>
internal static class VerifyAgain
{
    /// <summary>Lists it, job by job.</summary>
    public static void Tell(ITrailReader reader, IEnumerable<JobCheck> checks)
    {
        foreach (JobCheck check in checks)
        {
            (IReadOnlyList<RedecidedEntry> otherwise, long entries) = Recompute.Of(reader, check.Of);
            int same = otherwise.Count(e => e.IsSame);
            string told =
                same > 0
                    ? string.Create(
                        CultureInfo.InvariantCulture,
                        $" {same} the same, but told in another unit or to other places."
                    )
                    : "";
            Say.Line(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{check.Name}: decided again with the texts and the shop of then: {entries} entries, {otherwise.Count - same} otherwise.{told}"
                )
            );
            foreach (RedecidedEntry entry in otherwise.OrderBy(e => e.IsSame))
            {
                string how = entry.IsSame ? ": the same, told otherwise" : "";
                Say.Line(string.Create(CultureInfo.InvariantCulture, $"  Entry {entry.Entry}{how}"));
                Say.Line($"    then: {entry.Then}");
                Say.Line($"    now:  {entry.Now}");
            }
        }
    }

    /// <summary>The same for a script.</summary>
    public static Json Of(ITrailReader reader, IEnumerable<JobCheck> checks) =>
        Json.ListOf([
            .. checks.SelectMany(check =>
                Recompute
                    .Of(reader, check.Of)
                    .Otherwise.Select(entry =>
                        Json.MapOf(
                            ("what", new Json.Text(check.Name)),
                            ("entry", new Json.Whole(entry.Entry)),
                            ("then", new Json.Text(entry.Then)),
                            ("now", new Json.Text(entry.Now)),
                            ("same", new Json.Flag(entry.IsSame))
                        )
                    )
            ),
        ]);
}
