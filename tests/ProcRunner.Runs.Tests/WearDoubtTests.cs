using static ProcRunner.Runs.Tests.DoubtWork;

namespace ProcRunner.Runs.Tests;

/// <summary>A worn part that got bigger, a worn bore that got smaller. The thresholds are common practice, no source.</summary>
public sealed class WearDoubtTests
{
    // The stem gets smaller, its guide larger. Off by more than twice the gauge's uncertainty and five of the last digit.
    [Theory]
    [InlineData("smaller", "0.3410", "0.3416", true)]
    [InlineData("smaller", "0.3410", "0.3415", false)] // two readings may differ by this
    [InlineData("smaller", "0.3410", "0.3390", false)]
    [InlineData("larger", "0.3430", "0.3424", true)]
    [InlineData("larger", "0.3430", "0.3425", false)]
    [InlineData("larger", "0.3430", "0.3450", false)]
    public void A_worn_part_that_got_bigger_or_a_worn_bore_that_got_smaller(
        string wears,
        string found,
        string read,
        bool asked
    )
    {
        Rig rig = Twice(Wearing(wears), "depth: {low: 0.1, high: 0.9, origin: maker}", turn: null);
        rig.Enter("found 1I", found);

        IReadOnlyList<RunEvent> events = rig.Enter("once more 1I", read);

        Assert.Equal(asked, IsAsked(events));
        if (asked)
        {
            string why = Asked(events).Why;
            Assert.Contains($"Read {read} in; 0.0006 in", why, StringComparison.Ordinal);
            Assert.Contains($"the last reading, {found} in", why, StringComparison.Ordinal);
            Assert.Equal(RigShop.Q($"{read} in"), rig.Read("once more 1I", read).Value);
        }

        Same(rig);
    }

    [Theory]
    [InlineData("smaller", "0.3420", true)] // new it is 0.3406 to 0.3412
    [InlineData("smaller", "0.3412", false)]
    [InlineData("smaller", "0.3380", false)]
    [InlineData("larger", "0.3398", true)]
    [InlineData("larger", "0.3420", false)]
    public void As_found_a_worn_part_is_held_against_the_size_it_has_new(string wears, string read, bool asked)
    {
        Rig rig = AsFound(Wearing(wears), "depth: {low: 0.3406, high: 0.3412, origin: maker}", RigShop.State);

        Assert.Equal(asked, IsAsked(rig.Enter("found 1I", read)));
        if (asked)
        {
            Assert.False(IsAsked(rig.Enter("found 1I", read)));
        }
    }

    [Fact]
    public void A_coarser_gauge_may_differ_by_more()
    {
        Rig rig = Twice(Wearing("smaller"), "depth: {low: 0.1, high: 0.9, origin: maker}", turn: null);
        rig.Shop = rig.Shop.With(RigShop.Gauge("depth", "0.001 in"));
        rig.Enter("found 1I", "0.3410");

        Assert.False(IsAsked(rig.Enter("once more 1I", "0.3430")));
        rig.Enter("found 1E", "0.3410");
        Assert.True(IsAsked(rig.Enter("once more 1E", "0.3431")));
    }
}
