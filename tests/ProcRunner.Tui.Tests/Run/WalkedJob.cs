using ProcRunner.Tui.Jobs;

namespace ProcRunner.Tui.Tests.Run;

/// <summary>The whole demo job by number pad, once for all tests that look at it, with pictures taken on the way.</summary>
public sealed class WalkedJob : IDisposable
{
    // Each picture: its name, the entry before which it is taken, which time that entry comes, and keys pressed for it.
    private static readonly (string Name, string Entry, int Nth)[] Views =
    [
        ("inspect", "@ teardown / casting and stamp head", 1),
        ("do with cautions", "@ teardown / clean head", 1),
        ("reading, nothing known", "@ teardown / recession 1E", 1),
        ("reading of eight places", "@ teardown / flatness head", 1),
        ("decide", "@ teardown / guide 2E", 1),
        ("sign", "@ teardown / measured head", 1),
        ("out of spec, worked out", "another guide because loose fit", 1),
        ("part", "@ guide replacement / valve guide 2E", 1),
        ("number to set", "0", 2),
        ("target", "@ seat cut / recession 1I", 1),
        ("out of spec, retest first", "measure again", 1),
        ("reading at zero", "@ seat cut / seat 2E", 1),
        ("target, stop short", "@ seat cut / recession 2E", 1),
        ("measure in a cut", ".0580 .0577 .0578 .0579", 1),
        ("left, low passed", ".0220", 1),
        ("out of spec", "new insert because cut too deep", 1),
        ("recheck", "@ seat counterbore / guide bore after pressing 4I", 2),
        ("sign again", "@ teardown / measured head", 2),
        ("target of the deck", "@ surface / skim taken head", 1),
        ("reading, deck moved", "@ surface / recession after the deck 3E", 1),
        ("numbers shown", "@ assemble / hand-over notes head", 1),
        ("release", "@ assemble / released head", 1),
    ];

    private readonly Dictionary<string, int> _times = new(StringComparer.Ordinal);

    public WalkedJob()
    {
        Pad = new PadOperator(Job.Job);
        Pictures["cautions"] = Pad.Picture();
        foreach (string entry in DemoJob.Entries)
        {
            Pad.ReadCautions();
            Look(entry);
            Pad.Take(entry);
        }

        Pictures["released"] = WithoutCode(Job.Job, Pad.Picture());
    }

    /// <summary>The pictures by name.</summary>
    public Dictionary<string, string> Pictures { get; } = new(StringComparer.Ordinal);

    public DemoJob Job { get; } = new();

    internal PadOperator Pad { get; }

    public static TheoryData<string> Names =>
        [
            .. Views
                .Select(v => v.Name)
                .Concat([
                    "cautions",
                    "places half",
                    "menu",
                    "why",
                    "history",
                    "correct",
                    "ascii target",
                    "ascii out of spec",
                    "PIN",
                    "released",
                ]),
        ];

    public void Dispose() => Job.Dispose();

    private void Look(string entry)
    {
        int time = _times[entry] = _times.GetValueOrDefault(entry) + 1;
        foreach ((string name, _, _) in Views.Where(v => v.Entry == entry && v.Nth == time))
        {
            Pictures[name] = Pad.Picture();
            switch (name)
            {
                case "reading, deck moved":
                    Pad.Enter(".0580");
                    Pad.Type(".05");
                    Pictures["places half"] = Pad.Picture();
                    Pad.Type("****");
                    break;
                case "target, stop short":
                    Pictures["ascii target"] = Pad.Picture(ascii: true);
                    FromMenu("why");
                    FromMenu("history");
                    FromMenu("correct");
                    break;
                case "out of spec":
                    Pictures["ascii out of spec"] = Pad.Picture(ascii: true);
                    break;
                case "sign":
                    Pad.Choose("R. Vale (demo)");
                    Pad.Type("12");
                    Pictures["PIN"] = Pad.Picture();
                    Pad.Type("**/");
                    break;
                default:
                    break;
            }
        }
    }

    private void FromMenu(string answer)
    {
        Pad.Type("/");
        Pictures["menu"] = Pad.Picture();
        Pad.Choose(answer);
        Pictures[answer] = Pad.Picture();
        Pad.Type("/");
    }

    /// <summary>A picture without the proof code, which hangs on signatures that are never the same twice.</summary>
    internal static string WithoutCode(JobRun job, string picture) =>
        picture.Replace(job.Proof?.ToString() ?? "no code", "AAAAA-AAAAA-AAAAA-AAAAA-AAAAA", StringComparison.Ordinal);
}
