using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Heights;

public class HeightTests
{
    [Theory]
    [InlineData("sink-left", "recession=0.5 mm", "recession-high")]
    [InlineData("sink-left", "guide-angle=20 deg", "recession")]
    [InlineData("sink-window", "recession=0.6 mm; deck-cut=0.2 mm; low=0.9 mm; high=0.4 mm", "low")]
    [InlineData(
        "lash-shim",
        "fitted=2.5 mm; slides=0.20 mm; refuses=0.15 mm; wanted-least=0.2 mm; wanted-most=0.3 mm",
        "slides"
    )]
    [InlineData("recession-after", "recession=0.6 mm; sink=0.1 mm; guide-angle=95 deg", "guide-angle")]
    public void What_can_not_be_is_refused_by_name(string function, string given, string argument) =>
        Assert.Equal(argument, WorkBench.Fault(function, given).Argument);

    [Fact]
    public void A_valve_too_deep_is_not_helped_by_sinking_it() =>
        WorkBench.Gives(
            "sink-window",
            "recession=1.2 mm; deck-cut=0.1 mm; low=0.4 mm; high=0.9 mm",
            "least sink=0 mm; most sink=-0.2 mm; verdict=too deep: no sink helps"
        );

    // Whatever the budget leaves, used up it never passes a limit: exact, so no tolerance.
    [Property]
    public Property A_budget_used_up_passes_no_limit() =>
        Prop.ForAll(
            Gen.Choose(-1000, 3000)
                .Zip(Gen.Choose(-1000, 3000))
                .Zip(Gen.Choose(0, 800))
                .Zip(Gen.Choose(0, 3000))
                .ToArbitrary(),
            one =>
            {
                (((int recession, int high), int angle), int cut) = one;
                Assert.True(
                    ProcRunner
                        .ShopMath.Heights.GuideCosine(Rational.FromRatio(angle, 10))
                        .TryGet(out Rational cosine, out _)
                );
                Exact now = Mm(recession);
                Exact sink = ProcRunner.ShopMath.Heights.SinkFor(Mm(high), now, Mm(cut), cosine);
                Assert.Equal(Mm(high), ProcRunner.ShopMath.Heights.Recession(now, sink, Mm(cut), cosine));
            }
        );

    // As it is shown and typed again, not only as it is kept: what is shown in fewer digits must not pass the limit either.
    [Property]
    public Property A_budget_typed_again_as_shown_passes_no_limit() =>
        Prop.ForAll(
            Gen.Choose(0, 999).Zip(Gen.Choose(1, 899)).Zip(Gen.Choose(1, 399)).ToArbitrary(),
            one =>
            {
                ((int recession, int room), int angle) = one;
                string lean = FormattableString.Invariant($"guide-angle={angle / 10m} deg");
                string now = FormattableString.Invariant($"recession={recession / 1000m} mm");
                Exact high = Mm(recession + room);
                string sink = Shown(
                    "sink-left",
                    FormattableString.Invariant($"{now}; recession-high={(recession + room) / 1000m} mm; {lean}"),
                    "sink left"
                );
                Exact after = WorkBench
                    .Answer("recession-after", $"{now}; sink={sink}; {lean}")
                    .Find("recession after")!
                    .Amount!.Value;
                Assert.True(after.CompareTo(high) <= 0, sink);

                string limits = FormattableString.Invariant(
                    $"thickness={(100_000 + recession + room) / 25_000m} in; minimum={(100_000 + recession) / 1000m} mm"
                );
                string cut = Shown("deck-cut-allowed", limits, "cut allowed");
                WorkBench.Gives(
                    "deck-cut-allowed",
                    $"{limits}; cut={cut}",
                    cut.StartsWith('-') ? "verdict=not allowed" : "verdict=allowed"
                );
            }
        );

    [Property]
    public Property The_limit_that_binds_leaves_least() =>
        Prop.ForAll(
            Gen.Choose(-500, 500).NonEmptyListOf().ToArbitrary(),
            lefts =>
            {
                SinkLimit[] limits =
                [
                    .. lefts.Select((left, at) => new SinkLimit(at.ToString(CultureInfo.InvariantCulture), Mm(left))),
                ];
                SinkLimit binding = SinkLimit.Binding(limits)!;
                Assert.All(limits, one => Assert.True(binding.Left.CompareTo(one.Left) <= 0));
            }
        );

    // Any lash between the leaves, with any shim of the range, ends in the lash wanted.
    [Property]
    public Property A_decided_shim_is_right_for_every_lash_in_the_interval() =>
        Prop.ForAll(
            Gen.Choose(0, 40).Zip(Gen.Choose(0, 10)).Zip(Gen.Choose(0, 40).Zip(Gen.Choose(0, 20))).ToArbitrary(),
            one =>
            {
                ((int slides, int leaf), (int least, int band)) = one;
                Exact fitted = Mm(2500);
                Assert.True(
                    LashShim
                        .Of(fitted, Mm(slides), Mm(slides + leaf), Mm(least), Mm(least + band))
                        .TryGet(out LashShim? shim, out _)
                );
                Assert.Equal(band >= leaf, shim.IsDecided);
                if (shim.IsDecided)
                {
                    foreach (Exact lash in new[] { Mm(slides), Mm(slides + leaf) })
                    {
                        Exact most = fitted + lash - shim.Thinnest;
                        Exact fewest = fitted + lash - shim.Thickest;
                        Assert.True(most.CompareTo(Mm(least + band)) <= 0 && fewest.CompareTo(Mm(least)) >= 0);
                    }
                }
            }
        );

    private static string Shown(string function, string given, string name) =>
        WorkBench.Answer(function, given).Find(name)!.Text;

    private static Exact Mm(int thousandths) => new(Rational.FromRatio(thousandths, 1000), Dimension.OfLength);
}
