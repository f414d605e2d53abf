using ProcRunner.Shop;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Run;
using ProcRunner.Tui.Screens.Shop;

namespace ProcRunner.Tui.Tests.Shop;

/// <summary>The first head of a new shop: what a reading lacks is told before it is taken.</summary>
public sealed class MissingGaugeTests : IDisposable
{
    private readonly ShopBench _bench = new(runs: true);

    public void Dispose() => _bench.Dispose();

    [Fact]
    public void A_gauge_past_its_date_or_not_in_the_list_is_told_before_the_reading_and_mended_there()
    {
        JobRun run = _bench.Open("1001", "");
        _bench.Time.SetUtcNow(_bench.Time.GetUtcNow().AddHours(1));
        string[] before = ["as the job says", "none given", ".009", ".005", "done", "done", "68"];
        foreach (string entry in before)
        {
            Assert.IsType<JobAnswer.Recorded>(ShopBench.Enter(run, entry));
        }

        _bench.Session.Works("vale");
        Desk desk = new Desk(new JobListScreen(_bench.Session)).Type("\n\n");
        Assert.Contains(
            "M1  outside micrometer 0 to 6  PAST: calibrated until 2031-01-31",
            See(desk),
            StringComparison.Ordinal
        );

        desk.Type("1\n2032-01-31\n\n");
        Assert.Contains("Measure deck thickness", See(desk), StringComparison.Ordinal);
        desk.Type("3.9312 3.9310 3.9316 3.9314 3.9308\n");
        Assert.Contains("The shop has no gauge of the kind \"indicator\"", See(desk), StringComparison.Ordinal);

        desk.Type("1\n");
        Assert.IsType<AddGaugeForm>(desk.Top);
        desk.Type("I1\nlever indicator\n\n2\n.0001\n.0001\n\n\n");

        Gauge added = _bench.Store.Shop.Gauges["I1"];
        Assert.Equal("indicator", added.Kind);
        Assert.IsType<AskPage>(desk.Top);
        desk.Type("\n");
        Assert.IsType<StepPage>(desk.Top);
        Assert.Contains("Measure flatness", See(desk), StringComparison.Ordinal);
    }

    private string See(Desk desk) => desk.Picture(_bench.Look);
}
