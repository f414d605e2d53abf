using System.Text;
using ProcRunner.Runs;
using ProcRunner.Trail;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Tests.Run;

/// <summary>The whole demo job, from the first step to the release, by the keys of a number pad.</summary>
public class WholeJobTests
{
    // What two runs of one job can't share: times, what hangs on times and ids, and what is random.
    private static readonly string[] LeftOut = ["time", "signature", "covers"];

    [Fact]
    public void By_number_pad_the_trail_is_that_of_line_mode()
    {
        using DemoJob lines = new();
        Assert.Equal(Status.Done, lines.Lines(DemoJob.Entries));

        using DemoJob pad = new();
        PadOperator person = new(pad.Job);
        foreach (string entry in DemoJob.Entries)
        {
            person.Take(entry);
        }

        Assert.Equal(JobStanding.Released, pad.Job.State.Standing);
        Assert.Contains("RELEASED", person.See(), StringComparison.Ordinal);
        Assert.True(pad.Verifies);
        Assert.Equal(Trail(lines), Trail(pad));
    }

    private static string[] Trail(DemoJob job) =>
        [
            .. job
                .Store.Reader.ReadTrail(job.Job.State.JobId)
                .Entries.Select(e =>
                    $"{e.Entry.Operator} {string.Join(' ', e.Entry.Events.Select(m => Encoding.UTF8.GetString(CanonicalJson.Write(Bare(m)))))}"
                ),
        ];

    private static Json Bare(Json json) =>
        json switch
        {
            Json.Map map => Json.MapOf([
                .. map.Items.Where(p => !LeftOut.Contains(p.Key)).Select(p => (p.Key, Bare(p.Value))),
            ]),
            Json.List list => Json.ListOf([.. list.Items.Select(Bare)]),
            _ => json,
        };
}
