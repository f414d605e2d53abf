using ProcRunner.Tui.Demo;

namespace ProcRunner.Tui.Tests.Shell;

// By hand: 270 minutes before the break and 210 after it are 480 a day. 2026-11-25 is a Wednesday.
public class DemoClockTests
{
    private static readonly DateTimeOffset Wednesday = new(2026, 11, 25, 14, 0, 0, TimeSpan.Zero);

    // Five minutes each: 12 lines are an hour.
    [Theory]
    [InlineData(12, "2026-11-25 13:00")]
    [InlineData(18, "2026-11-25 11:45")]
    [InlineData(72, "2026-11-24 16:00")]
    [InlineData(288, "2026-11-20 14:00")]
    public void It_begins_so_much_work_before_the_end_that_the_lines_fit(int lines, string begins)
    {
        DemoClock clock = new(Wednesday, TimeZoneInfo.Utc, Enumerable.Repeat("done", lines));

        Assert.Equal(begins, clock.GetUtcNow().ToString("yyyy-MM-dd HH:mm", null));
    }

    [Fact]
    public void It_walks_through_working_hours_and_ends_at_the_end()
    {
        string[] lines = DemoBenchLines();
        DemoClock clock = new(Wednesday, TimeZoneInfo.Utc, lines);
        List<DateTimeOffset> times = [clock.GetUtcNow()];
        using WalkedLines walked = new(lines, clock);
        while (walked.ReadLine() is not null)
        {
            times.Add(clock.GetUtcNow());
        }

        Assert.Equal(times.Order(), times);
        Assert.InRange((times[^1] - Wednesday).TotalSeconds, -1, 0);
        Assert.True(times.Select(t => t.Date).Distinct().Count() > 1);
        Assert.All(times, t => Assert.InRange(t.DayOfWeek, DayOfWeek.Monday, DayOfWeek.Friday));
        Assert.All(times, t => Assert.InRange(t.TimeOfDay, new TimeSpan(7, 30, 0), new TimeSpan(16, 15, 0)));
    }

    // At night and at the end of a week the work is over since the last working minute.
    [Theory]
    [InlineData("2026-11-25T03:00:00Z", "2026-11-24 16:15")]
    [InlineData("2026-11-29T12:00:00Z", "2026-11-27 16:15")]
    public void Out_of_hours_it_ends_with_the_last_working_day(string now, string ends)
    {
        DemoClock clock = new(DateTimeOffset.Parse(now, null), TimeZoneInfo.Utc, []);

        Assert.Equal(ends, clock.GetUtcNow().ToString("yyyy-MM-dd HH:mm", null));
    }

    private static string[] DemoBenchLines() =>
        File.ReadAllLines(Testing.RepoRoot.PathOf("procedures/demo/pump-four.entries"));
}
