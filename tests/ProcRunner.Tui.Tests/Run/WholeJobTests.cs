using System.Text;
using ProcRunner.Runs;
using ProcRunner.Testing;
using ProcRunner.Trail;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Tests.Run;

/// <summary>The whole demo job, from the first step to the release, by the keys of a number pad.</summary>
public class WholeJobTests(WalkedJob walked) : IClassFixture<WalkedJob>
{
    // What two runs of one job can't share: times, what is random, and the digests that hang on either.
    private static readonly string[] LeftOut = ["time", "signature", "covers"];

    public static TheoryData<string> Pictures => WalkedJob.Names;

    [Fact]
    public void By_number_pad_the_trail_is_that_of_line_mode()
    {
        using DemoJob lines = new();
        Assert.Equal(Status.Done, lines.Lines(DemoJob.Entries));

        Assert.Equal(JobStanding.Released, walked.Job.Job.State.Standing);
        Assert.True(walked.Job.Verifies);
        Assert.Equal(Trail(lines), Trail(walked.Job));
        Assert.True(Trail(lines).Length > 500);
    }

    [Theory]
    [MemberData(nameof(Pictures))]
    public void It_looks_as_committed(string name) =>
        Golden.Match(walked.Pictures[name], $"{name.Replace(' ', '-').Replace(",", "", StringComparison.Ordinal)}.txt");

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
