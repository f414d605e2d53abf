using ProcRunner.Shop;

namespace ProcRunner.Runs.Tests;

/// <summary>The gauge must be able to tell, and be in date.</summary>
public sealed class GaugeTests
{
    private static Rig Make(string limit, string uncertainty, string more = "", string? until = null)
    {
        ShopState shop = RigShop.State with { Gauges = RigShop.State.Gauges.Clear() };
        return new Rig(
            Work.Procedure(
                "depth: {of: position, measured-in: length, gauge: depth, why: it matters}",
                "- measure: depth" + more
            ),
            Work.Head($"depth: {limit}"),
            shop.With(RigShop.Gauge("depth", uncertainty, until))
        );
    }

    // N:1 of ASME B89.7.3.1-2001: the zone is at least N times as wide as the interval of uncertainty, 2U. Zone 0.025 mm:
    // U 0.003 gives 4.17, passes; U 0.0035 gives 3.57, fails. A zone of 0.001 in wants 0.000125 in or less.
    [Theory]
    [InlineData("{low: 1.000 mm, high: 1.025 mm, origin: maker}", "0.003 mm", "1.01 mm", true)]
    [InlineData("{low: 1.000 mm, high: 1.025 mm, origin: maker}", "0.0035 mm", "1.01 mm", false)]
    [InlineData("{low: 1.000, high: 1.001, origin: maker}", "0.000125 in", "1.0005", true)]
    [InlineData("{low: 1.000, high: 1.001, origin: maker}", "0.000126 in", "1.0005", false)]
    [InlineData("{low: 1.000, high: 1.001, origin: maker}", "0.003175 mm", "1.0005", true)]
    [InlineData("{low: 1.000, high: 1.001, origin: maker}", "0.003176 mm", "1.0005", false)]
    [InlineData("{high: 0.002, origin: maker}", "0.00025 in", "0.001", true)]
    [InlineData("{high: 0.002, origin: maker}", "0.00026 in", "0.001", false)]
    [InlineData("{low: 0.002, origin: maker}", "0.1 in", "0.003", true)]
    public void Four_to_one_unless_said(string limit, string uncertainty, string text, bool fit)
    {
        Rig rig = Make(limit, uncertainty);

        Decision decision = rig.Try(new RunCommand.Enter(rig.At("depth 1I"), text));

        Assert.Equal(fit, decision is Decision.Accepted);
        Assert.True(fit || ((Decision.Refused)decision).Why.Contains("can't tell", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("1", true)]
    [InlineData("3", true)]
    [InlineData("4", false)]
    [InlineData("10", false)]
    public void A_step_may_say_another_ratio(string ratio, bool fit)
    {
        // Zone 0.006 over an interval of 0.002: 3 to 1.
        Rig rig = Make("{low: 0.046, high: 0.052, origin: maker}", "0.001 in", $"\n  gauge-ratio: {ratio}");

        Assert.Equal(fit, rig.Try(new RunCommand.Enter(rig.At("depth 1I"), "0.050")) is Decision.Accepted);
    }

    [Theory]
    [InlineData("2026-03-01", false)]
    [InlineData("2026-03-02", true)] // the last day counts; the rig's clock says 2 March
    [InlineData("2027-01-01", true)]
    public void Past_its_date_it_is_refused_until_another_is_taken(string until, bool fit)
    {
        Rig rig = Make("{low: 0.046, high: 0.058, origin: maker}", "0.0001 in", until: until);

        Assert.Equal(fit, rig.Try(new RunCommand.Enter(rig.At("depth 1I"), "0.050")) is Decision.Accepted);
        if (!fit)
        {
            rig.Shop = rig.Shop.With(RigShop.Gauge("depth", "0.0001 in") with { Id = "depth-2" });
            rig.Do(new RunCommand.ChooseGauge("depth", "depth-2"));
            Assert.Equal("depth-2", rig.Read("depth 1I", "0.050").Gauge);
        }
    }

    [Fact]
    public void Of_several_one_is_chosen_once_kept_until_changed_and_stands_with_each_reading()
    {
        Rig rig = Make("{low: 0.046, high: 0.058, origin: maker}", "0.0001 in");
        rig.Shop = rig.Shop.With(RigShop.Gauge("depth", "0.0001 in") with { Id = "depth-2" });
        rig.Shop = rig.Shop.With(RigShop.Gauge("bore", "0.0001 in"));

        rig.EnterRefused("depth 1I", "0.050");
        rig.Refuses(new RunCommand.ChooseGauge("depth", "bore-1"));
        rig.Refuses(new RunCommand.ChooseGauge("depth", "nothing"));
        rig.Do(new RunCommand.ChooseGauge("depth", "depth-2"));

        Assert.Equal("depth-2", rig.Read("depth 1I", "0.050").Gauge);
        Assert.Equal("depth-2", rig.Read("depth 1E", "0.050").Gauge);
        rig.Do(new RunCommand.ChooseGauge("depth", "depth-1"));
        Assert.Equal("depth-1", rig.Read("depth 2I", "0.050").Gauge);
    }
}
