using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Run;
using ProcRunner.Tui.Screens.Shop;

namespace ProcRunner.Tui.Tests.Shop;

/// <summary>A wrong entry and the one in its place: both are shown wherever the job is looked at, with the reason.</summary>
public sealed class BothAreShownTests : IDisposable
{
    private readonly ShopBench _bench = new(runs: true);
    private readonly JobRun _run;
    private readonly At _first;

    public BothAreShownTests()
    {
        _run = _bench.Open("1001", "Upper Field (invented)");
        _first = Prompter.Next(_run.State)!.Value;
        Assert.IsType<JobAnswer.Recorded>(ShopBench.Enter(_run, "another casting"));
        Assert.IsType<JobAnswer.Recorded>(_run.Do(new RunCommand.Correct(_first, "as the job says", "misread stamp")));
    }

    public void Dispose() => _bench.Dispose();

    [Fact]
    public void In_show()
    {
        (JobAccount? account, _) = JobAccount.Read(_bench.Store.Reader, _run.State.JobId);
        string shown = string.Join('\n', JobAccountLines.Of(account!));

        Assert.Contains("== Corrections ==", shown, StringComparison.Ordinal);
        AssertBoth(shown);
    }

    [Fact]
    public void On_the_page_of_how_the_job_stands() => AssertBoth(Whole(new JobScreen(_bench.Session, _run)));

    [Fact]
    public void In_the_history_while_it_is_worked_on() =>
        AssertBoth(string.Join('\n', HistoryText.Of(new RunWork(_run), null)));

    [Fact]
    public void In_the_story_of_the_position() => AssertBoth(Whole(new HistoryScreen(_bench.Session, _run, At.Head)));

    [Fact]
    public void In_the_build_record()
    {
        (JobAccount? account, _) = JobAccount.Read(_bench.Store.Reader, _run.State.JobId);
        Records.Story.Correction correction = Assert.Single(account!.Record.Corrections);

        Assert.Contains("another casting", correction.Was, StringComparison.Ordinal);
        Assert.Contains("as the job says", correction.Now, StringComparison.Ordinal);
        Assert.Equal("misread stamp", correction.Reason);
    }

    [Fact]
    public void What_replaying_the_trail_comes_to_is_the_same()
    {
        (JobReading? read, _) = JobReading.Read(_bench.Store.Reader, _run.State.JobId);

        Assert.Equal(_run.State.Corrections, read!.State.Corrections);
    }

    private static void AssertBoth(string shown)
    {
        Assert.Contains("another casting", shown, StringComparison.Ordinal);
        Assert.Contains("as the job says", shown, StringComparison.Ordinal);
        Assert.Contains("misread stamp", shown, StringComparison.Ordinal);
    }

    private string Whole(Screen screen)
    {
        Desk desk = new(screen);
        string pages = "";
        for (int page = 0; page < 12; page++)
        {
            pages += desk.Picture(_bench.Look, 120, 60);
            desk.Press(new KeyPress(KeyKind.PageDown, ""));
        }

        return pages;
    }
}
