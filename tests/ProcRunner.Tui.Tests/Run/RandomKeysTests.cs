using System.Globalization;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Lines;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Run;
using Xunit.Abstractions;

namespace ProcRunner.Tui.Tests.Run;

/// <summary>
/// Keys at random, among them what gauges, scanners and pasted text send. Nothing throws, every screen draws, and the trail
/// always holds. PROCRUNNER_RANDOM_KEYS sets how many, PROCRUNNER_SEED where they begin.
/// </summary>
public class RandomKeysTests(ITestOutputHelper output)
{
    private const string Characters = "0123456789.+-*/0123456789.+-*/ abco,'\"\u00b0\u001b\u0007\ud83d\u202e\u4e2d";

    private static readonly KeyPress Escape = new(KeyKind.Escape, "");

    private static readonly string[] Lines = [".0580", "135790", "2468", "1", "2", "sound", "done", "68", "none given"];

    [Theory]
    [InlineData("")]
    [InlineData("seat cut / recession 3E")]
    public void Random_keys_break_nothing(string from)
    {
        int count = Setting("PROCRUNNER_RANDOM_KEYS", 10_000) / 2;
        int seed = Setting("PROCRUNNER_SEED", 20_260_105);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count} keys from seed {seed}"));
        Random random = new(seed);
        using DemoJob job = new();
        if (from.Length > 0)
        {
            job.UpTo(from);
        }

        long first = job.Job.State.Sequence;
        Look look = new(Glyphs.Utf8, DateTimeOffset.UnixEpoch);
        Desk desk = new(RunScreen.Open(job.Job));
        int pressed = 0;
        for (int i = 0; pressed < count; i++)
        {
            foreach (KeyPress key in Keys(random, job))
            {
                desk = desk.Top is null ? new Desk(RunScreen.Open(job.Job)) : desk;
                desk.Press(key);
                pressed++;
            }

            if (i % 5 == 0)
            {
                desk.Draw(random.Next(60, 140), random.Next(20, 50), look);

                // In a window too small no key does anything.
                desk.Draw(Desk.FewestColumns, Desk.FewestRows, look);
            }
        }

        output.WriteLine(
            string.Create(CultureInfo.InvariantCulture, $"{job.Job.State.Sequence - first} entries, at {Where(job)}")
        );
        Assert.True(job.Verifies);
        Assert.True(job.Job.State.Sequence > first + 10);
        Runs.RunState replayed = Replayed(job);
        Assert.Equal(job.Job.State.Sequence, replayed.Sequence);
        Assert.Equal(job.Job.State.Standing, replayed.Standing);
    }

    // One key; a line as a gauge sends it; or now and then the right answer, or the job would never get on.
    private static IEnumerable<KeyPress> Keys(Random random, DemoJob job)
    {
        int kind = random.Next(100);
        if (kind < 50)
        {
            return [KeyPress.Of(Characters[random.Next(Characters.Length)])];
        }

        return kind < 70 ? [KeyPress.Enter]
            : kind < 73 ? [new KeyPress((KeyKind)random.Next(2, 8), "")]
            : kind < 76 ? [new KeyPress(KeyKind.Paste, "0.0512\n0.0509\r\n0.0510\t.0511")]
            : kind < 86 ? [.. Lines[random.Next(Lines.Length)].Select(KeyPress.Of), KeyPress.Enter]
            : [KeyPress.Enter, Escape, .. Right(random, job).Select(KeyPress.Of), KeyPress.Enter];
    }

    // What the demo enters at the step in hand, at one of the times it comes there.
    private static string Right(Random random, DemoJob job)
    {
        string[] answers = Runs.Prompts.Prompter.Next(job.Job.State) is { } at
            ?
            [
                .. DemoJob
                    .Entries.Zip(DemoJob.Entries.Skip(1))
                    .Where(pair =>
                        pair.First[0] == '@' && StepFinder.Find(job.Job.State, pair.First[1..].Trim()).At == at
                    )
                    .Select(pair => pair.Second),
            ]
            : [];
        return answers.Length == 0 ? "1" : answers[random.Next(answers.Length)];
    }

    private static Runs.RunState Replayed(DemoJob job)
    {
        job.Reopen();
        return job.Job.State;
    }

    private static string Where(DemoJob job) =>
        Runs.Prompts.Prompter.Next(job.Job.State) is { } at ? job.Job.State.Plan.NameOf(at) : "the end";

    private static int Setting(string name, int usual) =>
        int.TryParse(
            Environment.GetEnvironmentVariable(name),
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out int value
        )
            ? value
            : usual;
}
