using ProcRunner.Practice.Heads;

namespace ProcRunner.Practice.Tests;

/// <summary>The practice head's geometry against figures worked out by hand, apart from the runner's own functions.</summary>
public class GeometryTests
{
    private const double Digits = 0.5e-9;

    // Plane geometry of a cone, dr/dz = -cot(angle): 2 * 0.10 * cot 45 and cot 30.
    [Theory]
    [InlineData(45, 0.200)]
    [InlineData(30, 0.346410162)]
    [InlineData(60, 0.115470054)]
    public void A_cone_cut_a_tenth_deeper_grows_at_a_fixed_depth(double angle, double grows) =>
        Assert.Equal(grows, Geometry.Widening(0.10, angle), Digits);

    // 0.10 / cos(angle).
    [Theory]
    [InlineData(45, 0.141421356)]
    [InlineData(30, 0.115470054)]
    [InlineData(60, 0.2)]
    public void A_face_ground_square_sinks_the_valve_by_more(double angle, double sinks) =>
        Assert.Equal(sinks, Geometry.Sink(0.10, angle), Digits);

    // (38.0 - 35.6) / (2 cos(angle)).
    [Theory]
    [InlineData(45, 1.697056275)]
    [InlineData(30, 1.385640646)]
    public void A_seats_width_lies_along_its_face(double angle, double width)
    {
        Assert.Equal(width, Geometry.Width(38.0, 35.6, angle), Digits);
        Assert.Equal(38.0, Geometry.OutsideFor(width, 35.6, angle), 2 * Digits);
    }

    // A skim of 0.25 at a guide that leans 20 degrees needs 0.266044 along the guide: 0.25 / cos 20.
    [Fact]
    public void A_leaning_guide_gives_less_depth_than_travel() =>
        Assert.Equal(0.25, Geometry.SquareToDeck(0.266044, 20), 0.5e-6);

    // A 3-4-5 triangle: offset 5, indicator 10 over a turn.
    [Fact]
    public void Runout_is_twice_the_offset() => Assert.Equal(10, Geometry.RunoutOf(3, 4), Digits);

    // By hand from Lamé's equations on radii b = 8, a = 4 with E = 1000 and an interference of 0.02 on the diameter, 0.01 on the
    // radius: p = 0.01 * 1000 * (64 - 16) / (2 * 512) = 0.46875; the bore closes 2 p a b² / (E (b² - a²)) = 2 * 0.46875 * 4 * 64 /
    // (1000 * 48) = 0.005 on the radius, 0.010 on the diameter.
    [Fact]
    public void Pressing_closes_a_guide_in() => Assert.Equal(0.010, Geometry.BoreClosing(0.02, 8, 16), Digits);

    [Fact]
    public void A_loose_guide_closes_nothing() => Assert.Equal(0, Geometry.BoreClosing(-0.01, 8, 16), Digits);

    // The same ring: p / E = 0.46875 / 1000 at radius 8; at 40 from its axis the stress is p (8/40)² = 0.01875 and a hole of 10
    // changes by 4 * 0.01875 / 1000 * 10 = 0.00075.
    [Fact]
    public void A_pressed_ring_pinches_the_hole_beside_it() =>
        Assert.Equal(0.00075, Geometry.Pinch(0.02, 16, 8, 10, 40), 1e-12);

    // An insert of 40.06 in a bore of 40.00 is 0.06 tight; warmed by 150 K, iron 11.4e-6 against aluminium 21.5e-6 leaves
    // 0.06 + 40.06 * 11.4e-6 * 150 - 40 * 21.5e-6 * 150 = 0.06 + 0.0685026 - 0.129 = -0.0004974: nothing.
    [Fact]
    public void Heat_takes_an_iron_ring_loose_in_aluminium() =>
        Assert.Equal(-0.0004974, Geometry.FitAt(40.06, 40.00, 11.4e-6, 21.5e-6, 150, 150), 0.5e-7);

    // Chilled by 100 K the ring goes in with room to spare: 0.06 - 40.06 * 11.4e-6 * 100 = 0.01433.
    [Fact]
    public void Cold_makes_a_ring_go_in() =>
        Assert.Equal(0.0143316, Geometry.FitAt(40.06, 40.00, 11.4e-6, 21.5e-6, -100, 0), 0.5e-7);
}
