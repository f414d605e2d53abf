using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Work;

/// <summary>
/// What may still be used up and what is needed, read off the screen and typed in again: the limit must hold with the figure
/// as it is shown, not only as it is kept. Units are mixed, so that nothing comes out even.
/// </summary>
public sealed class ShownLimitTests
{
    [Property]
    public Property A_reface_typed_again_keeps_the_margin() =>
        Over(
            (room, angle) =>
            {
                string margin = In($"margin={(1000 + room) / 25_000m} in");
                string face = In($"face-angle={30 + (angle / 20m)} deg");
                string left = Shown("reface-left", $"{margin}; margin-low=1.000 mm; {face}", "reface left");
                WorkFigure after = WorkBench
                    .Answer("margin-after", $"{margin}; removed={left}; {face}")
                    .Find("margin after")!;
                Assert.True(after.Amount!.Value.In(Units.Millimetre).ToDouble() >= 1 - 1e-9, left);
            }
        );

    [Property]
    public Property A_hoop_stress_stays_under_its_limit() =>
        Over(
            (limit, diameter) =>
            {
                string ring =
                    In($"diameter={25 + (diameter / 7m):0.###} mm; outside={90 + (diameter / 7m):0.###} mm; ")
                    + "outer-material=grey-iron; inner-material=steel-4140";
                string interference = Shown(
                    "press-fit-for-hoop",
                    In($"hoop-limit={limit} MPa; {ring}"),
                    "interference"
                );
                double stress = Value("press-fit", $"interference={interference}; {ring}", "outer hoop at bore");
                Assert.True(stress <= limit * (1 + 1e-12), In($"{stress} at {interference}"));
            }
        );

    [Property]
    public Property What_is_heated_as_shown_goes_in() =>
        Over(
            (interference, clearance) =>
            {
                string part = "diameter=38.1 mm; part-material=aluminium-356";
                string difference = Shown(
                    "assembly-temperature",
                    In($"interference={interference / 10_000m} mm; clearance={clearance / 10_000m} mm; {part}"),
                    "difference"
                );
                string end = difference.Replace("K", "degC", StringComparison.Ordinal);
                double grown = Value(
                    "length-change",
                    $"length=38.1 mm; part-material=aluminium-356; start=0 degC; end={end}",
                    "change"
                );
                Assert.True(grown >= (interference + clearance) / 10_000.0 * (1 - 1e-12), difference);
            }
        );

    [Property]
    public Property A_value_at_the_end_of_its_zone_is_accepted() =>
        Over(
            (high, uncertainty) =>
            {
                // Wider than twice the uncertainty: in a narrower zone nothing can be proved, so that it has no ends.
                string limits = In(
                    $"low=0 in; high={0.01m + (high / 1000m)} mm; uncertainty={uncertainty / 100_000m} mm"
                );
                foreach (string end in (string[])["accept from", "accept to"])
                {
                    string shown = Shown("conformity", $"value=0 in; {limits}", end);
                    WorkBench.Gives("conformity", $"value={shown}; {limits}", "verdict=proved in limits");
                }
            }
        );

    [Property]
    public Property A_gauge_of_the_most_uncertainty_can_tell() =>
        Over(
            (high, ratio) =>
            {
                string zone = In($"low=0 in; high={high / 1000m} mm; ratio={2 + (ratio / 100m)}");
                string most = Shown("gauge-ratio", $"{zone}; uncertainty=0.0001 mm", "most uncertainty");
                WorkBench.Gives("gauge-ratio", $"{zone}; uncertainty={most}", "verdict=the gauge can tell");
            }
        );

    [Property]
    public Property A_roughness_is_kept_by_the_feed_shown() =>
        Over(
            (roughness, nose) =>
            {
                string given = In($"nose={1 + (nose / 100m)} mm");
                string feed = Shown("feed-for-roughness", In($"roughness={roughness / 100m} um; {given}"), "feed");
                double left = Value("ideal-roughness", $"feed={feed}; {given}", "roughness");
                Assert.True(left <= roughness / 100.0 * (1 + 1e-11), feed);
            }
        );

    [Property]
    public Property The_cut_shown_reaches_the_deepest_pit() =>
        Over(
            (pit, reading) =>
            {
                string cut = Shown(
                    "deck-cut-needed",
                    In($"readings=0 in {reading / 100_000m} in; pits={pit / 1000m} mm"),
                    "cut needed"
                );
                Assert.True(Quantity.TryParse(cut, out var typed), cut);
                Assert.True(typed.Value * 25.4m >= Math.Max(pit / 1000m, reading / 100_000m * 25.4m), cut);
            }
        );

    [Property]
    public Property A_shim_as_shown_leaves_the_lash_in_its_limits() =>
        Over(
            (fitted, lash) =>
            {
                string felt = In($"fitted={fitted / 1000m} in; slides={lash / 1000m} mm; refuses={lash / 1000m} mm");
                string limits = In($"{felt}; wanted-least=0.10 mm; wanted-most=0.20 mm");
                foreach (string end in (string[])["thinnest", "thickest"])
                {
                    Assert.True(Quantity.TryParse(Shown("lash-shim", limits, end), out var shim));
                    decimal left = (fitted / 1000m * 25.4m) + (lash / 1000m) - (shim.Value * 25.4m);
                    Assert.InRange(left, 0.10m, 0.20m);
                }
            }
        );

    private static Property Over(Action<int, int> holds) =>
        Prop.ForAll(Gen.Choose(1, 999).Zip(Gen.Choose(1, 199)).ToArbitrary(), pair => holds(pair.Item1, pair.Item2));

    private static string Shown(string function, string given, string name) =>
        WorkBench.Answer(function, given).Find(name)!.Text;

    private static double Value(string function, string given, string name) =>
        (double)WorkBench.Answer(function, given).Find(name)!.Value!.Value.Value;

    private static string In(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
