using MathNet.Numerics.Statistics;
using ProcRunner.Practice.Works;
using ProcRunner.Quantities;
using ProcRunner.Shop;

namespace ProcRunner.Practice.Tests;

/// <summary>Where the tool is when the readout shows a number, worked by hand (mm).</summary>
public class SpindleTests
{
    private const double Digits = 0.5e-9;

    // Touched at 10 with 0 shown. In diameter mode 1.0 shown is 0.5 of travel. In step mode each pass counts from the last: 0.3, then
    // 0.2 more.
    [Fact]
    public void Diameter_and_step_mode_count_as_they_do_on_a_machine()
    {
        Spindle diameter = WorkRig.Spindle(new Readout(Units.Millimetre, 0.001m, true, true, false, false));
        diameter.SetAt("cutter", 10, Mm(0));
        Assert.Equal(10.5, diameter.CutTo(Mm(1.0m)), Digits);
        Assert.Equal(10.6, diameter.CutTo(Mm(1.2m)), Digits);

        Spindle steps = WorkRig.Spindle(new Readout(Units.Millimetre, 0.001m, true, false, true, false));
        steps.SetAt("cutter", 10, Mm(0));
        Assert.Equal(10.3, steps.CutTo(Mm(0.3m)), Digits);
        Assert.Equal(10.5, steps.CutTo(Mm(0.2m)), Digits);
    }

    // 0.010 in is 0.254 mm.
    [Fact]
    public void A_readout_in_inches_moves_the_tool_in_inches()
    {
        Spindle inches = WorkRig.Spindle(new Readout(Units.Inch, 0.0005m, true, false, false, false));
        inches.SetAt("cutter", 10, new Quantity(0.055m, Units.Inch));

        Assert.Equal(10.254, inches.CutTo(new Quantity(0.065m, Units.Inch)), Digits);
    }

    // 0.02 of wear a pass, on the demo's readout: the second pass to 0.04 in (1.016) stays 0.02 behind; with a fresh edge a deeper one
    // to 0.05 in (1.27) doesn't.
    [Fact]
    public void A_fresh_edge_cuts_to_its_number_again()
    {
        WorkRig rig = new(("edge wear", 0.02));
        rig.BenchSpindle.SetAt("touch seat", 10, new Quantity(0, Units.Inch));
        Assert.Equal(10.508, rig.BenchSpindle.CutTo(new Quantity(0.02m, Units.Inch)), Digits);
        Assert.Equal(10.996, rig.BenchSpindle.CutTo(new Quantity(0.04m, Units.Inch)), Digits);
        rig.Do("fresh edge", 0);
        Assert.Equal(11.27, rig.BenchSpindle.CutTo(new Quantity(0.05m, Units.Inch)), Digits);
    }

    // Raised again, the tool has cut what it has cut.
    [Fact]
    public void What_is_cut_stays_cut()
    {
        Spindle spindle = WorkRig.Spindle(Plain);
        spindle.SetAt("cutter", 10, Mm(0));
        Assert.Equal(10.5, spindle.CutTo(Mm(0.5m)), Digits);
        Assert.Equal(10.5, spindle.CutTo(Mm(0.4m)), Digits);
    }

    // Touch-off +- 0.03 and spindle +- 0.04: the cut lies root of 0.0025 = 0.05 off; 4,000 of them. A touch-off that is 0.03 too deep
    // makes every depth from it 0.03 too deep.
    [Fact]
    public void A_cut_errs_by_its_touch_off_and_its_spindle()
    {
        Spindle spindle = WorkRig.Spindle(Plain, ("touch off", 0.03), ("spindle", 0.04));
        double[] off = new double[4_000];
        for (int i = 0; i < off.Length; i++)
        {
            spindle.SetAt("cutter", 10, Mm(0));
            off[i] = spindle.CutTo(Mm(1)) - 11;
        }

        Assert.Equal(0, off.Average(), 4 * 0.05 / Math.Sqrt(off.Length));
        Assert.Equal(0.05, off.StandardDeviation(), 0.05 * 0.05);
    }

    [Fact]
    public void One_wrong_touch_off_moves_every_cut_from_it()
    {
        Spindle spindle = WorkRig.Spindle(Plain, ("touch off", 0.03));
        spindle.SetAt("cutter", 10, Mm(0));
        double off = spindle.CutTo(Mm(1)) - 11;

        Assert.NotEqual(0, off, 1e-4);
        Assert.Equal(off, spindle.CutTo(Mm(2)) - 12, Digits);
    }

    // A hand that stops +- 0.04 off, to the readout's step of 0.01: whole steps, deviation root(0.04^2 + 0.01^2 / 12) = 0.0401 (JCGM
    // 100:2008, 4.3.7).
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_hand_stops_a_little_before_or_past_the_number(bool grows)
    {
        Spindle spindle = WorkRig.Spindle(
            new Readout(Units.Millimetre, 0.01m, grows, false, false, false),
            ("stop", 0.04)
        );
        decimal[] off = [.. Enumerable.Range(0, 4_000).Select(_ => spindle.StopAt(Mm(5)).Value - 5)];

        Assert.All(off, o => Assert.Equal(0, o % 0.01m));
        Assert.Equal(0, off.Average(o => (double)o), 4 * 0.04 / Math.Sqrt(off.Length));
        Assert.Equal(0.0401, off.Select(o => (double)o).StandardDeviation(), 0.0401 * 0.05);
    }

    private static Readout Plain => new(Units.Millimetre, 0.001m, true, false, false, false);

    private static Quantity Mm(decimal value) => new(value, Units.Millimetre);
}
