using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Seats;

/// <summary>Seat geometry. Values are plane trigonometry of a cone, the angle from the plane square to the guide's axis.</summary>
public class SeatTests
{
    // 2 cot, 1/cos, 1/(2 cos) of 30, 45 and 60 deg.
    [Theory]
    [InlineData(30, 3.4641016151, 1.1547005384, 0.5773502692)]
    [InlineData(45, 2, 1.4142135624, 0.7071067812)]
    [InlineData(60, 1.1547005384, 2, 1)]
    public void Factors_of_the_usual_angles(double angle, double growth, double sink, double width)
    {
        Assert.Equal(growth, Value(SeatGeometry.DiameterGrowth(1, angle)), 0.5e-10);
        Assert.Equal(sink, Value(SeatGeometry.Sink(1, angle)), 0.5e-10);
        Assert.Equal(width, Value(SeatGeometry.Width(31, 30, angle)), 0.5e-10);
    }

    // A width of 1.5 mm: at 45 deg 1.060660172 both ways, at 30 deg 1.299038106 radial and 0.75 axial.
    [Theory]
    [InlineData("45 deg", "37.121320344 mm", "1.060660172 mm", "1.060660172 mm")]
    [InlineData("30 deg", "37.598076211 mm", "1.299038106 mm", "0.750000000 mm")]
    public void A_width_has_a_radial_and_an_axial_part(string angle, string outer, string radial, string axial)
    {
        WorkBench.Gives(
            "seat-outer-diameter",
            $"inner-diameter=35 mm; width=1.5 mm; seat-angle={angle}",
            $"outer diameter={outer}"
        );
        WorkBench.Gives(
            "seat-width",
            $"outer-diameter={outer}; inner-diameter=35 mm; seat-angle={angle}",
            $"width=1.500000000 mm; radial part={radial}; axial part={axial}"
        );
    }

    // cos and sin of 30, 45 and 60 deg: the radial and the axial part of a width of 1.
    [Theory]
    [InlineData(30, "0.8660254", "0.5000000")]
    [InlineData(45, "0.7071068", "0.7071068")]
    [InlineData(60, "0.5000000", "0.8660254")]
    public void Parts_of_a_width_of_one(int angle, string radial, string axial)
    {
        string outer = FormattableString.Invariant(
            $"{30 + (2 * Math.Cos(double.DegreesToRadians(angle))):0.000000000}"
        );
        WorkBench.Gives(
            "seat-width",
            FormattableString.Invariant($"outer-diameter={outer} mm; inner-diameter=30 mm; seat-angle={angle} deg"),
            $"width=1.00000000 mm; radial part={radial} mm; axial part={axial} mm"
        );
    }

    // Where the depth readout was zeroed wrong by e, the target is wrong by e, one for one.
    [Theory]
    [InlineData("0.023 in", "0.0290 in")]
    [InlineData("0.026 in", "0.0260 in")]
    [InlineData("0.020 in", "0.0320 in")]
    public void An_error_at_touch_off_is_passed_on_whole(string measured, string target) =>
        WorkBench.Gives(
            "readout-target",
            $"measured={measured}; aim=0.052 in; step=0.0005 in; grows=deeper; shows=travel",
            $"target={target}"
        );

    // Two readings of one uncertainty make up a depth: u x root 2 (JCGM 100:2008, 5.1.2).
    [Fact]
    public void Two_readings_are_uncertain_by_the_root_of_two() =>
        Known.Printed("1.4142135624", Known.Value(UncertaintyBudget.Of([1, 1], [])).Combined);

    [Property]
    public Property Inverses_invert() =>
        Prop.ForAll(
            Gen.Choose(1, 89).Zip(Gen.Choose(1, 1000)).Zip(Gen.Choose(2000, 5000)).ToArbitrary(),
            one =>
            {
                ((int angle, int hundredths), int inner) = one;
                double width = hundredths / 100.0;
                double outer = Value(SeatGeometry.OuterDiameter(inner / 100.0, width, angle));
                Assert.Equal(width, Value(SeatGeometry.Width(outer, inner / 100.0, angle)), 8);
                Assert.Equal(inner / 100.0, Value(SeatGeometry.InnerDiameter(outer, width, angle)), 9);
                double growth = Value(SeatGeometry.DiameterGrowth(width, angle));
                Assert.Equal(width, Value(SeatGeometry.DepthForGrowth(growth, angle)), 9);
                double sink = Value(SeatGeometry.Sink(width, angle));
                Assert.Equal(width, Value(SeatGeometry.RemovedForSink(sink, angle)), 9);
            }
        );

    // Where two cones meet: the seat's own edge moved by the cut is the edge wanted.
    [Fact]
    public void A_narrowed_seat_ends_where_it_was_wanted()
    {
        double down = Value(SeatGeometry.DepthToNarrowOutside(38, 37, 45, 30));
        // Top cone through (19, 0) lowered by down: z = (19 - r) tan 30 + down; seat: z = (19 - r) tan 45.
        double radius = 19 - (down / (1 - Math.Tan(Math.PI / 6)));
        Assert.Equal(18.5, radius, 12);

        double up = Value(SeatGeometry.DepthToNarrowInside(34, 35, 45, 75));
        // Bottom cone through (17, 0) deeper by up: z = (17 - r) tan 75 + up; seat: z = (17 - r) tan 45.
        double inner = 17 + (up / (Math.Tan(5 * Math.PI / 12) - 1));
        Assert.Equal(17.5, inner, 12);
    }

    [Theory]
    [InlineData("seat-width", "outer-diameter=35 mm; inner-diameter=38 mm; seat-angle=45 deg", "inner-diameter")]
    [InlineData("seat-width", "outer-diameter=38 mm; inner-diameter=0 mm; seat-angle=45 deg", "inner-diameter")]
    [InlineData("seat-width", "outer-diameter=38 mm; inner-diameter=35 mm; seat-angle=90 deg", "seat-angle")]
    [InlineData("sink-from-face", "removed=0.1 mm; face-angle=0 deg", "face-angle")]
    [InlineData("diameter-growth", "depth=0.1 mm; seat-angle=-45 deg", "seat-angle")]
    [InlineData("seat-inner-diameter", "outer-diameter=3 mm; width=3 mm; seat-angle=45 deg", "width")]
    [InlineData(
        "narrow-from-outside",
        "outer-now=38 mm; outer-wanted=37 mm; seat-angle=45 deg; cutter-angle=60 deg",
        "cutter-angle"
    )]
    [InlineData(
        "narrow-from-outside",
        "outer-now=37 mm; outer-wanted=38 mm; seat-angle=45 deg; cutter-angle=30 deg",
        "outer-wanted"
    )]
    [InlineData(
        "narrow-from-inside",
        "inner-now=34 mm; inner-wanted=36 mm; seat-angle=45 deg; cutter-angle=30 deg",
        "seat-angle"
    )]
    [InlineData(
        "contact-place",
        "face-outer=40 mm; face-inner=34 mm; contact-outer=41 mm; contact-inner=36 mm; face-angle=45 deg",
        "contact-outer"
    )]
    [InlineData("readout-target", "measured=0.023 in; aim=0.052 in; step=0 in; grows=deeper; shows=travel", "step")]
    [InlineData(
        "readout-target",
        "measured=0.023 in; aim=0.052 in; step=0.001 in; grows=deeper; shows=travel; guide-angle=90 deg",
        "guide-angle"
    )]
    public void What_can_not_be_is_refused_by_name(string function, string given, string argument)
    {
        ShopFault fault = WorkBench.Fault(function, given);

        Assert.Equal(argument, fault.Argument);
        Assert.NotEmpty(fault.Allowed);
    }

    // A maker's tolerance of a seat's angle, 44 deg 53' to 45 deg 07': 44.883333 and 45.116667 deg.
    [Theory]
    [InlineData("2693 arcmin", "44.883333 deg", "0.116667 deg")]
    [InlineData("2707 arcmin", "45.116667 deg", "-0.116667 deg")]
    public void Angles_may_be_given_in_minutes(string face, string degrees, string difference)
    {
        Assert.True(Known.Of(face).TryToQuantity(Units.Degree, 6, Rounding.Nearest, out Quantity found));
        Assert.Equal(degrees, found.ToString());
        WorkBench.Gives("angle-difference", $"seat-angle=45 deg; face-angle={face}", $"difference={difference}");
    }

    [Fact]
    public void A_reading_past_the_aim_is_cut_no_further() =>
        WorkBench.Gives(
            "readout-approach",
            "measured=0.054 in; aim=0.052 in; shown=0.030 in; allowance=0.005 in; step=0.0005 in; grows=deeper; shows=travel",
            "advice=cut no more: the aim is reached"
        );

    private static double Value(ShopResult<double> result)
    {
        Assert.True(result.TryGet(out double value, out ShopFault? fault), fault?.ToString());
        return value;
    }
}
