using FsCheck.Xunit;
using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.PressFits;

public class PressFitTests
{
    private static readonly Elasticity Steel = new(200_000, 0.30);

    // Ugural and Fenster, Advanced Strength and Applied Elasticity, Ex. 8.3, p. 243: radii 150, 200, 250 mm, 200 GPa, 0.1 mm on the
    // radius; printed 12.3 MPa, and with that 56.03, 43.73, -56.23, -43.93. (A public notebook of it divides by 8 and gets 307.6.)
    [Fact]
    public void One_material_hollow()
    {
        PressFitLoad load = At(Fit(300, 400, 500, Steel, Steel), 0.2);

        Known.Printed("12.3046875", load.PressureMegapascals);
        Known.Printed("12.3", load.PressureMegapascals);
        Known.Printed("56.0546875", load.OuterHoopAtBoreMegapascals);
        Known.Printed("43.75", load.OuterHoopAtOutsideMegapascals);
        Known.Printed("-56.25", load.InnerHoopAtBoreMegapascals);
        Known.Printed("-43.9453125", load.InnerHoopAtContactMegapascals);

        PressFitLoad printed = Known.Value(load.Fit.AtPressure(12.3));
        Known.Printed("56.03", printed.OuterHoopAtBoreMegapascals);
        Known.Printed("43.73", printed.OuterHoopAtOutsideMegapascals);
        Known.Printed("-56.23", printed.InnerHoopAtBoreMegapascals);
        Known.Printed("-43.93", printed.InnerHoopAtContactMegapascals);
    }

    // Boresi and Schmidt, Advanced Mechanics of Materials, Ex. 11.3, p. 398: radii 10, 25, 50 mm, 200 GPa, 0.29, 0.072 mm on the
    // radius. The book puts the inner part's own 25.072 mm in and prints 188.97; with 25 mm for both it is 189.000. Stresses as printed,
    // at the book's pressure before it was rounded.
    [Fact]
    public void One_material_hollow_as_printed()
    {
        Elasticity steel = new(200_000, 0.29);
        PressFit fit = Fit(20, 50, 100, steel, steel);

        Known.Printed("189.000", At(fit, 0.144).PressureMegapascals);

        PressFitLoad load = Known.Value(fit.AtPressure(188.96674716617267));
        Known.Printed("-449.92", load.InnerHoopAtBoreMegapascals);
        Known.Printed("-260.95", load.InnerHoopAtContactMegapascals);
        Known.Printed("125.98", load.OuterHoopAtOutsideMegapascals);
        Known.Printed("314.94", load.OuterHoopAtBoreMegapascals);
    }

    // The same example the book's way: the outer part's bore is 25 mm, the inner part's outside its own 25.072; what one grows and the
    // other shrinks for each MPa, added, takes the whole interference. Printed 188.97; more digits worked out apart from this program.
    [Fact]
    public void Each_part_at_its_own_size_as_printed()
    {
        Elasticity steel = new(200_000, 0.29);
        double grows = Known.Value(Fit(20, 50, 100, steel, steel).AtPressure(1)).BoreGrowthMillimetres;
        double shrinks = Known.Value(Fit(20, 50.144, 100, steel, steel).AtPressure(1)).PartShrinkageMillimetres;

        Known.Printed("188.96674716617267", 0.144 / (grows + shrinks));
        Known.Printed("188.97", 0.144 / (grows + shrinks));
    }

    // Bhavikatti, Strength of Materials, ch. 8: radii 100, 125, 150 mm, 200 GPa, 30 MPa where they touch; printed 0.189 on the radius.
    [Fact]
    public void Allowance_for_a_pressure()
    {
        PressFitLoad load = Known.Value(Fit(200, 250, 300, Steel, Steel).AtPressure(30));

        Known.Printed("0.18939393939393936", load.InterferenceMillimetres / 2);
        Known.Printed("0.189", load.InterferenceMillimetres / 2);
    }

    // Lecture slides on shrink fits (https://ru.scribd.com/doc/239703088/x-2-Shrink-Fits): steel shaft of radii 25 and 50 mm, 210 GPa,
    // 0.3, in an iron disc of 125 mm, 70 GPa, 0.25, length 100 mm, friction 0.15, hoop held to 30 MPa. Inputs as printed there, results
    // worked out apart from this program.
    [Fact]
    public void Two_materials_held_to_a_hoop_stress()
    {
        PressFitLoad load = Known.Value(Fit(50, 100, 250, new(70_000, 0.25), new(210_000, 0.3)).AtOuterHoop(30));

        Known.Printed("21.724137931034484", load.PressureMegapascals);
        Known.Printed("0.032376847290640394", load.InterferenceMillimetres / 2);
        Known.Printed("0.025307881773399", load.BoreGrowthMillimetres / 2);
        Known.Printed("0.007068965517241", load.PartShrinkageMillimetres / 2);
        Known.Printed("0.06475369458128", load.InterferenceMillimetres);
        Known.Printed("102372.58819456396", Known.Value(load.AxialForceNewtons(100, 0.15)));
        Known.Printed("5118.629409728197", Known.Value(load.TorqueNewtonMetres(100, 0.15)));

        // Ugural, Mechanical Design, prints about these (from memory).
        Known.Printed("21.7", load.PressureMegapascals);
        Known.Printed("0.032", load.InterferenceMillimetres / 2);
        Known.Printed("102", Known.Value(load.AxialForceNewtons(100, 0.15)) / 1000);
        Known.Printed("5.1", Known.Value(load.TorqueNewtonMetres(100, 0.15)) / 1000);
    }

    // https://tutorsglobe.com/question/determine-the-pressure-at-the-common-interface-5734939.aspx: sleeve of radii 100 and 175 mm,
    // 200 GPa, 0.28, on a hollow shaft of 50 and 100 mm, 80 GPa, 0.33; the sleeve's bore grows by 0.2 mm on the diameter. Inputs as
    // printed there, results worked out apart from this program.
    [Fact]
    public void Two_materials_from_the_growth_of_the_bore()
    {
        PressFitLoad load = At(Fit(100, 200, 350, new(200_000, 0.28), new(80_000, 0.33)), 2 * 0.24853852370689652);

        Known.Printed("88.90086206896551", load.PressureMegapascals);
        Known.Printed("0.2", load.BoreGrowthMillimetres);
        Known.Printed("0.14853852370689652", load.PartShrinkageMillimetres / 2);
        Known.Printed("175.1077586206896", load.OuterHoopAtBoreMegapascals);
        Known.Printed("86.2068965517241", load.OuterHoopAtOutsideMegapascals);
        Known.Printed("-237.0689655172414", load.InnerHoopAtBoreMegapascals);
        Known.Printed("-148.1681034482759", load.InnerHoopAtContactMegapascals);
    }

    // Shaft 60 +0.030/+0.011 in hub 60 +0.019/0 of 100 mm, 210 GPa, 0.292, friction 0.3, length 10 mm: a public answer page takes
    // (1 - nu²)(1 + beta) for the shape and is wrong; solid and of one material, p = E D/(d (beta + 1)), so 33.6 MPa exactly.
    [Fact]
    public void One_material_solid()
    {
        Elasticity steel = new(210_000, 0.292);
        PressFitLoad load = At(Fit(0, 60, 100, steel, steel), 0.030);

        Known.Printed("33.6000000000000", load.PressureMegapascals);
        Known.Printed("19000.352368911066", Known.Value(load.AxialForceNewtons(10, 0.3)));
        Known.Printed("-33.6000000000000", load.InnerHoopAtContactMegapascals);
        Known.Printed("-33.6000000000000", load.InnerHoopAtBoreMegapascals);
        Assert.Equal("interference", Known.Fault(load.Fit.AtInterference(-0.008)).Argument);
    }

    // A ring of 38/32 x 6 mm, 200 GPa, 0.30, with 0.10 mm in a head taken as a ring of 60 mm, friction 0.12; moduli of Callister, Materials
    // Science and Engineering, Table B.2; worked out apart from this program.
    [Theory]
    [InlineData(72_400, 0.33, "40.64042439280104", "95.0789891638629", "-279.4512991581177", "3493.2060223383")]
    [InlineData(100_000, 0.26, "48.844989685158545", "114.27371427269931", "-335.867452882709", "4198.421022381653")]
    public void A_ring_in_a_head(
        double modulus,
        double poisson,
        string pressure,
        string head,
        string ring,
        string force
    )
    {
        PressFitLoad load = At(Fit(32, 38, 60, new(modulus, poisson), Steel), 0.10);

        Known.Printed(pressure, load.PressureMegapascals);
        Known.Printed(head, load.OuterHoopAtBoreMegapascals);
        Known.Printed(ring, load.InnerHoopAtBoreMegapascals);
        Known.Printed(force, Known.Value(load.AxialForceNewtons(6, 0.12)));
    }

    // Boresi and Schmidt, Ex. 11.1, p. 397: radii 10 and 50 mm, 300 MPa inside.
    [Theory]
    [InlineData(20, "-300", "325")]
    [InlineData(50, "-37.5", "62.5")]
    [InlineData(100, "0", "25")]
    public void Stress_in_a_thick_ring(double at, string radial, string hoop)
    {
        (double Radial, double Hoop) stress = Known.Value(new ThickRing(20, 100, 300).StressMegapascals(at));

        Known.Printed(radial, stress.Radial);
        Known.Printed(hoop, stress.Hoop);
    }

    // Two relations against each other: the outer part is a thick ring with the contact pressure inside, so that where the parts
    // touch the radial stress is the pressure, turned round.
    [Property]
    public void The_outer_part_is_a_ring_under_the_contact_pressure(byte inside, byte wall, byte interference)
    {
        double diameter = inside + 5.0;
        double outside = diameter + 1 + wall;
        PressFitLoad load = At(Fit(inside, diameter, outside, new(72_400, 0.33), Steel), interference / 1000.0);
        ThickRing ring = new(diameter, outside, load.PressureMegapascals);

        (double radial, double hoop) = Known.Value(ring.StressMegapascals(diameter));
        (double radialOutside, double hoopOutside) = Known.Value(ring.StressMegapascals(outside));

        double slack = 1e-12 * (1 + load.OuterHoopAtBoreMegapascals);
        Assert.Equal(-load.PressureMegapascals, radial, slack);
        Assert.Equal(load.OuterHoopAtBoreMegapascals, hoop, slack);
        Assert.Equal(0, radialOutside, slack);
        Assert.Equal(load.OuterHoopAtOutsideMegapascals, hoopOutside, slack);
    }

    [Theory]
    [InlineData(20, 10, 300, 15, "inside")]
    [InlineData(0, 10, 300, 5, "inside")]
    [InlineData(20, 100, -1, 50, "pressure")]
    [InlineData(20, 100, 300, 19, "at")]
    [InlineData(20, 100, 300, double.NaN, "at")]
    public void A_ring_that_is_none_is_refused(
        double inside,
        double outside,
        double pressure,
        double at,
        string argument
    ) => Assert.Equal(argument, Known.Fault(new ThickRing(inside, outside, pressure).StressMegapascals(at)).Argument);

    [Theory]
    [InlineData(32, 38, 38, 0.3, 200_000, "diameter")]
    [InlineData(38, 38, 60, 0.3, 200_000, "inside")]
    [InlineData(-1, 38, 60, 0.3, 200_000, "inside")]
    [InlineData(0, 0, 60, 0.3, 200_000, "diameter")]
    [InlineData(0, 38, double.PositiveInfinity, 0.3, 200_000, "diameter")]
    [InlineData(0, 38, 60, 0.51, 200_000, "outer poisson")]
    [InlineData(0, 38, 60, 0.3, 0, "outer modulus")]
    [InlineData(0, 38, 60, 0.3, double.NaN, "outer modulus")]
    public void Parts_that_are_none_are_refused(
        double inside,
        double diameter,
        double outside,
        double poisson,
        double modulus,
        string argument
    ) =>
        Assert.Equal(
            argument,
            Known.Fault(PressFit.Of(inside, diameter, outside, new Elasticity(modulus, poisson), Steel)).Argument
        );

    [Property]
    public void Pressure_is_in_proportion_to_interference_and_both_ways_agree(
        byte inside,
        byte wall,
        ushort interference
    )
    {
        double bore = inside;
        PressFit fit = Fit(bore, bore + 5, bore + 6 + wall, new(72_400, 0.33), Steel);
        double millimetres = interference / 1000.0 % (bore + 5) / 2;

        PressFitLoad once = At(fit, millimetres);
        PressFitLoad twice = At(fit, 2 * millimetres);

        Assert.Equal(2 * once.PressureMegapascals, twice.PressureMegapascals, 1e-9);
        Assert.Equal(millimetres, once.InterferenceMillimetres, 1e-12);
        Assert.Equal(
            once.PressureMegapascals,
            Known.Value(fit.AtPressure(once.PressureMegapascals)).PressureMegapascals,
            1e-9
        );
    }

    // The short forms for one material, Shigley eq. 3-57 (from memory) and Ugural and Fenster, chapter 8: radii a, b, c, interference
    // delta on the radius; Poisson's ratio falls out.
    [Property]
    public void One_material_agrees_with_the_short_forms(byte inside, byte middle, byte outside, byte poisson)
    {
        Elasticity steel = new(200_000, poisson / 510.0);
        (double a, double b) = (1.0 + inside, 2.0 + inside + middle);
        double c = b + 1 + outside;
        const double delta = 0.01;

        double hollow =
            200_000 * delta / b * (((c * c) - (b * b)) * ((b * b) - (a * a))) / (2 * b * b * ((c * c) - (a * a)));
        double solid = 200_000 * delta / b * ((c * c) - (b * b)) / (2 * c * c);

        Assert.Equal(hollow, At(Fit(2 * a, 2 * b, 2 * c, steel, steel), 2 * delta).PressureMegapascals, 1e-8);
        Assert.Equal(solid, At(Fit(0, 2 * b, 2 * c, steel, steel), 2 * delta).PressureMegapascals, 1e-8);
    }

    [Property]
    public void A_stiffer_head_takes_more_pressure(ushort modulus)
    {
        double softer = 1000 + modulus;

        Assert.True(
            At(Fit(32, 38, 60, new(softer, 0.3), Steel), 0.1).PressureMegapascals
                < At(Fit(32, 38, 60, new(softer + 1, 0.3), Steel), 0.1).PressureMegapascals
        );
    }

    [Fact]
    public void Pressure_falls_to_zero_with_either_wall()
    {
        double last = double.MaxValue;
        double lastInner = double.MaxValue;
        for (double wall = 10; wall > 1e-9; wall /= 10)
        {
            double outer = At(Fit(32, 38, 38 + wall, Steel, Steel), 0.1).PressureMegapascals;
            double inner = At(Fit(38 - wall, 38, 60, Steel, Steel), 0.1).PressureMegapascals;

            Assert.InRange(outer, 0, last);
            Assert.InRange(inner, 0, lastInner);
            last = outer;
            lastInner = inner;
        }

        Assert.InRange(last, 0, 1e-6);
        Assert.InRange(lastInner, 0, 1e-6);
    }

    [Fact]
    public void Grey_iron_has_no_modulus_to_be_taken_unasked()
    {
        ShopFault fault = WorkBench.Fault(
            "press-fit",
            "interference=0.1 mm; diameter=38 mm; outside=60 mm; outer-material=grey-iron-g3000; inner-material=steel-1020"
        );

        Assert.Equal("outer-modulus", fault.Argument);
        Assert.Contains("90 to 113 GPa", fault.Allowed, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("length=6 mm", "friction")]
    [InlineData("friction=0.1", "length")]
    [InlineData("length=6 mm; friction=1.5", "friction")]
    [InlineData("length=0 mm; friction=0.1", "length")]
    public void Length_and_friction_go_together(string extra, string argument) =>
        Assert.Equal(
            argument,
            WorkBench
                .Fault(
                    "press-fit",
                    "interference=0.1 mm; diameter=38 mm; outside=60 mm; outer-material=aluminium-356; inner-material=steel-1020; "
                        + extra
                )
                .Argument
        );

    // The first example with its lengths and modulus in inch units: 0.2 mm is 0.0078740157 in, 200 GPa 29007547.5 psi (NIST SP 811).
    [Fact]
    public void Inch_and_metric_give_the_same_pressure() =>
        WorkBench.Gives(
            "press-fit",
            "interference=0.007874015748 in; diameter=15.748031496063 in; outside=19.685039370079 in; inside=11.811023622047 in; "
                + "outer-modulus=29007547.546 psi; outer-poisson=0.3; inner-modulus=29007547.546 psi; inner-poisson=0.3",
            "contact pressure=12.30469 MPa; contact pressure=1784.644 psi"
        );

    private static PressFit Fit(double inside, double diameter, double outside, Elasticity outer, Elasticity inner) =>
        Known.Value(PressFit.Of(inside, diameter, outside, outer, inner));

    private static PressFitLoad At(PressFit fit, double interference) => Known.Value(fit.AtInterference(interference));
}
