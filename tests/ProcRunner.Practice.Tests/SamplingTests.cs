using ProcRunner.Practice.Rehearsals;

namespace ProcRunner.Practice.Tests;

/// <summary>What chance leaves open about a figure of a rehearsal.</summary>
public class SamplingTests
{
    // Wilson's score interval for 10 of 100: 0.0552 to 0.1744 (R's prop.test without continuity correction, from memory; by hand
    // (0.1 + 3.8415 / 200 -+ 1.96 sqrt(0.1 * 0.9 / 100 + 3.8415 / 40000)) / 1.038415).
    [Fact]
    public void A_share_lies_between_the_ends_of_its_score_interval()
    {
        (double low, double high) = new Proportion(10, 100).Interval;

        Assert.Equal(0.0552291, low, 1e-5);
        Assert.Equal(0.1743657, high, 1e-5);
    }

    // None of 10: at most z^2 / (n + z^2) = 3.84146 / 13.84146.
    [Fact]
    public void Of_none_found_it_says_how_many_there_may_be()
    {
        Assert.Equal(
            (0.0, 0.277533),
            (new Proportion(0, 10).Interval.Low, Math.Round(new Proportion(0, 10).Interval.High, 6))
        );
        Assert.Equal(1, new Proportion(10, 10).Interval.High);
        Assert.Equal((0.0, 1.0), new Proportion(0, 0).Interval);
    }

    // Pooled: 0.275 and sqrt(0.275 * 0.725 * 0.02) = 0.06315, of which 1.96 are 0.1238; 0.25 and 0.06124, of which 0.1200.
    [Theory]
    [InlineData(35, true)]
    [InlineData(30, false)]
    public void Two_shares_differ_when_chance_alone_hardly_does_that(int other, bool differ) =>
        Assert.Equal(differ, Proportion.Differ(new Proportion(20, 100), new Proportion(other, 100)));

    // 20 heads gained and 5 lost of 400: 0.0375, and 1.959964 sqrt(25 - 15 * 15 / 400) / 400 = 0.0242225; 15 is more than 1.96 * 5.
    [Fact]
    public void On_the_same_heads_only_those_count_that_changed()
    {
        PairedChange change = new(20, 5, 400);

        Assert.Equal(0.0375, change.Change, 1e-9);
        Assert.Equal(0.0242225, change.Error, 1e-6);
        Assert.True(change.Tells);
        Assert.False(new PairedChange(13, 5, 400).Tells); // 8, and 1.96 sqrt(18) = 8.3
        Assert.False(new PairedChange(0, 0, 400).Tells);
    }
}
