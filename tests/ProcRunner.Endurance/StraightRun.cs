using System.Globalization;
using ProcRunner.Trail;

namespace ProcRunner.Endurance;

/// <summary>The demo job run once without being disturbed: what each entry is answered with, and the trail it leaves.</summary>
/// <param name="Entries">The entries; the first makes entry 2 of the trail, since entry 1 opens the job.</param>
/// <param name="Answers">Per entry, the first line of its acknowledgement.</param>
/// <param name="Trail">The trail.</param>
internal sealed record StraightRun(IReadOnlyList<DemoEntry> Entries, IReadOnlyList<string> Answers, DemoTrail Trail)
{
    private const string EndOfHelp = "    quit";

    /// <summary>Runs the job on a new store. Help is asked for after each entry, since its end is easily told.</summary>
    /// <exception cref="InvalidDataException">The run doesn't end released, or can't be followed.</exception>
    public static StraightRun Make(string program, string store)
    {
        IReadOnlyList<DemoEntry> entries = DemoEntry.ReadAll(BuiltProgram.Entries);
        List<string> answers = [];
        using LineProgram run = new(program, store);
        run.Send("?");
        IReadOnlyList<string>? before = run.WaitFor(0, IsEndOfHelp);
        foreach (DemoEntry entry in entries)
        {
            int from = run.Count;
            run.Send(entry.Place, entry.Text, "?");
            IReadOnlyList<string>? after = run.WaitFor(from, IsEndOfHelp);
            bool isLast = answers.Count == entries.Count - 1;
            if (before is null || (after is null && !isLast))
            {
                (int status, IReadOnlyList<string> all, string errors) = run.End();
                throw new InvalidDataException(
                    string.Create(CultureInfo.InvariantCulture, $"Status {status} at {entry}: {all[^1]} {errors}")
                );
            }

            string answer = isLast ? run.End().Lines[from] : after![0];
            string[] prompt =
            [
                .. before.SkipWhile(line => !line.StartsWith(entry.PromptStart, StringComparison.Ordinal)),
            ];
            if (prompt.Length == 0 || prompt.Contains(answer))
            {
                throw new InvalidDataException(
                    $"{entry}: its answer \"{answer}\" can't be told from what stood before."
                );
            }

            answers.Add(answer);
            before = after;
        }

        DemoTrail trail = DemoTrail.Read(store);
        return run.End().Status == 0 && trail.Verdict is TrailVerdict.Holds && trail.Entries.Count == entries.Count + 1
            ? new(entries, answers, trail)
            : throw new InvalidDataException(
                "The undisturbed run doesn't end released, with an entry in the trail for each entry."
            );
    }

    private static bool IsEndOfHelp(string line) => line.StartsWith(EndOfHelp, StringComparison.Ordinal);
}
