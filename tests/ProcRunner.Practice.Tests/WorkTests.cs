using ProcRunner.Practice.Chances;
using ProcRunner.Practice.Heads;
using ProcRunner.Practice.Works;
using ProcRunner.Quantities;

namespace ProcRunner.Practice.Tests;

/// <summary>Each kind of work done by its name on a practice head, with what is true afterwards worked by hand (mm, degrees).</summary>
public class WorkTests
{
    private const double Digits = 0.5e-9;
    private readonly PracticeHead _head = PracticeHead.Draw(Demo.Binding.Plan.Head, Demo.Setup.Heads, new Chance(21));

    // Sleeve 8 in 16, 0.02 tight: Lame's equations by hand in GeometryTests give 0.010 on the diameter.
    [Fact]
    public void Pressing_closes_a_guide_in()
    {
        Bench bench = With();
        Set(Truths.GuideOutside, 16);
        Set(Truths.GuideHole, 15.98);
        Set(Truths.GuideInside, 8);
        Do(bench, "press guide", 24);

        Assert.Equal(7.990, _head[Truths.GuideBore, 0, 3], Digits);
        Assert.Equal(24, _head[Truths.StandOut, 0], Digits);
    }

    // The axis shifts by 0.02 (one deviation) each way, so the indicator's 2 * sqrt(x * x + y * y) has a mean square of
    // 4 * 2 * 0.02 * 0.02: its root is 0.0565685. 4,000 guides.
    [Fact]
    public void Sizing_a_guide_moves_the_seats_runout()
    {
        Bench bench = With(("guide axis shift", 0.02));
        double squares = 0;
        for (int i = 0; i < 4_000; i++)
        {
            (_head[Truths.OffAlong, 0], _head[Truths.OffAcross, 0]) = (0, 0);
            Do(bench, "size guide", 9);
            squares += Math.Pow(True("seat runout"), 2);
        }

        Assert.Equal(0.0565685, Math.Sqrt(squares / 4_000), 0.0565685 * 0.03);
        Assert.Equal(9, _head[Truths.GuideBore, 0, 0], Digits);
    }

    // 0.10 square to a face of 45 degrees: the valve sinks and its margin loses 0.141421356 (0.10 / cos 45); a tip ground by
    // 0.2 lowers the stem height by that. Of a face that ran out by 0.06, half is taken besides: 0.13 / cos 45 = 0.183847763.
    [Theory]
    [InlineData(0, 0.141421356)]
    [InlineData(0.06, 0.183847763)]
    public void Refacing_sinks_a_valve(double runout, double sinks)
    {
        Bench bench = With(("least reface", 0.10), ("tip ground", 0.2), ("reface angle", 45));
        _head[Truths.FaceRunout, 0] = runout;
        (double recession, double margin, double stem, double height) = (
            True("recession"),
            _head[Truths.Margin, 0],
            True("stem height"),
            True("installed height")
        );
        Do(bench, "reface valve", 0);

        Assert.Equal(recession + sinks, True("recession"), Digits);
        Assert.Equal(margin - sinks, _head[Truths.Margin, 0], Digits);
        Assert.Equal(stem + sinks - 0.2, True("stem height"), Digits);
        Assert.Equal(height + sinks, True("installed height"), Digits);
    }

    // Wanted 1.00, the seat gives 0.62, then the deck loses 0.15: 1.00 - 0.62 + 0.15 = 0.53 more in the seat leaves 1.00. The
    // cone of 45 degrees grows by 2 * 0.53 at a fixed depth.
    [Fact]
    public void A_skim_takes_from_the_recession_what_the_seat_gave()
    {
        Bench bench = With();
        Skim(bench, 0.5); // flat from here on
        double recession = True("recession");
        _head[Truths.SeatDepth, 0] += 0.62 - recession;
        _head[Truths.SeatAngle, 0] = 45;
        double outside = _head[Truths.SeatOutside, 0];
        WorkTable.Find("cut seat")!.Cuts!(bench, 0, _head[Truths.SeatDepth, 0] + 0.53);
        Skim(bench, 0.15);

        Assert.Equal(1.00, True("recession"), Digits);
        Assert.Equal(outside + 1.06, _head[Truths.SeatOutside, 0], Digits);
    }

    // Touched again on the new deck and cut again, what was taken in all is the sum.
    [Fact]
    public void A_deck_that_is_cut_twice_has_lost_both_cuts()
    {
        Bench bench = With();
        Skim(bench, 0.15);
        Skim(bench, 0.10);

        Assert.Equal(0.25, True("skim taken"), Digits);
    }

    // Iron 40.06 in an aluminium bore of 40.00, 0.06 tight. The head 150 K warmer: 0.06 - 40 * 21.5e-6 * 150 = -0.069. The insert
    // 100 K colder: 0.06 - 40.06 * 11.4e-6 * 100 = 0.0143316. Both: -0.1146684. Back at the room's warmth 0.06 again.
    [Fact]
    public void Heat_and_chill_change_fits_while_they_last()
    {
        Bench bench = With(("oven", 150), ("chill", 100));
        Aluminium();
        Assert.Equal(0.06, True("insert fit as it goes in"), Digits);
        Do(bench, "warm head", 0);
        Assert.Equal(-0.069, True("insert fit as it goes in"), Digits);
        Do(bench, "chill insert", 0);
        Assert.Equal(-0.1146684, True("insert fit as it goes in"), Digits);
        Do(bench, "let head come to room", 0);
        Assert.Equal(0.0143316, True("insert fit as it goes in"), Digits);
        Do(bench, "press insert", 0);
        Assert.Equal(0.06, True("insert fit as it goes in"), Digits);
    }

    // Every insert that is tight stops 0.05 short; one that slips in lies on the bottom. Counterbore 7.05, insert 7.00, its seat 0.02
    // under its top: 0.07 under the face.
    [Theory]
    [InlineData(false, 0.05)]
    [InlineData(true, 0)]
    public void An_insert_that_slips_in_bottoms(bool warm, double gap)
    {
        Bench bench = With(("oven", 150), ("insert not bottomed", 1), ("not bottomed by", 0.05));
        Aluminium();
        Set(Truths.CounterboreDepth, 7.05);
        Set(Truths.InsertHeight, 7.00);
        _head[Truths.FreshDepth, 0] = 0.02;
        if (warm)
        {
            Do(bench, "warm head", 0);
        }

        Do(bench, "press insert", 0);

        Assert.Equal(gap, _head[Truths.InsertGap, 0, 2], Digits);
        Assert.Equal(0.05 + 0.02 - gap, _head[Truths.SeatDepth, 0], Digits);
    }

    // Guide 16.02 in 16.00; chilled by 200 K at 11.4e-6 it is 16.02 * 11.4e-6 * 200 = 0.0365256 smaller and slips onto its stop.
    [Fact]
    public void A_chilled_guide_slips_onto_its_stop()
    {
        Bench bench = With(("chill", 200), ("press stop", 0.5));
        Set(Truths.GuideOutside, 16.02);
        Set(Truths.GuideHole, 16.00);
        _head[Truths.GuideExpansion, 0] = 11.4e-6;
        _head[Truths.HeadTemperature, 0] = _head[Truths.RoomTemperature, 0];
        Do(bench, "chill guide", 0);
        Assert.Equal(0.02 - 0.0365256, True("guide fit as it goes in"), Digits);
        Do(bench, "press guide", 24);

        Assert.Equal(24, _head[Truths.StandOut, 0], Digits);
        Do(bench, "press guide", 24);
        Assert.NotEqual(24, _head[Truths.StandOut, 0], 1e-4);
    }

    // 0.5 shown from a surface at 10: flex keeps 0.01 * 0.5 back, backlash 0.03, so 10.465. Then 0.6: metal 0.135, flex 0.00135, one
    // pass of wear 0.02, backlash 0.03: 10.54865. With a fresh edge 0.7: metal 0.15135, behind 0.0015135 + 0.03: 10.6684865.
    [Fact]
    public void A_cut_stays_behind_its_readout_by_flex_wear_and_backlash()
    {
        Spindle spindle = SpindleOf(shrinks: false, ("flex", 0.01), ("edge wear", 0.02), ("backlash", 0.03));
        spindle.SetAt("cutter", 10, new Quantity(0, Units.Millimetre));

        Assert.Equal(10.465, spindle.CutTo(new Quantity(0.5m, Units.Millimetre)), Digits);
        Assert.Equal(10.54865, spindle.CutTo(new Quantity(0.6m, Units.Millimetre)), Digits);
        spindle.ChangeEdge();
        Assert.Equal(10.6684865, spindle.CutTo(new Quantity(0.7m, Units.Millimetre)), Digits);
        spindle.SetAt("another cutter", 20, new Quantity(0, Units.Millimetre));
        Assert.Equal(20.465, spindle.CutTo(new Quantity(0.5m, Units.Millimetre)), Digits);
    }

    [Fact]
    public void A_readout_that_shrinks_deeper_cuts_as_deep()
    {
        Spindle spindle = SpindleOf(shrinks: true);
        spindle.SetAt("cutter", 10, new Quantity(2, Units.Millimetre));

        Assert.Equal(10.5, spindle.CutTo(new Quantity(1.5m, Units.Millimetre)), Digits);
    }

    // A cone cut deeper by 0.10: at 30 degrees its diameter grows by 0.346410162 (2 * 0.10 * cot 30).
    [Fact]
    public void Cutting_a_seat_deeper_widens_it()
    {
        _head[Truths.SeatAngle, 0] = 30;
        double outside = _head[Truths.SeatOutside, 0];
        WorkTable.Find("cut seat")!.Cuts!(With(), 0, _head[Truths.SeatDepth, 0] + 0.10);

        Assert.Equal(outside + 0.346410162, _head[Truths.SeatOutside, 0], Digits);
    }

    private static Spindle SpindleOf(bool shrinks, params (string Name, double Value)[] tools) =>
        new(
            new Shop.Readout(Units.Millimetre, 0.001m, !shrinks, false, false, false),
            new Tooling(Amounts(tools)),
            new Chance(1),
            new Chance(2)
        );

    private Bench With(params (string Name, double Value)[] tools) =>
        new(_head, Demo.Binding.Plan.Head, Demo.Setup with { Tools = Amounts(tools) }, 7);

    // In the base unit of each: mm, degrees, K, or a pure number.
    private static Dictionary<string, Quantity> Amounts((string Name, double Value)[] tools) =>
        tools.ToDictionary(
            t => t.Name,
            t => new Quantity(
                (decimal)t.Value,
                Units.All.First(u => u.Dimension == Tooling.Known[t.Name] && u.Factor == Rational.One)
            )
        );

    private void Aluminium()
    {
        _head[Truths.HeadExpansion, 0] = 21.5e-6;
        _head[Truths.InsertExpansion, 0] = 11.4e-6;
        _head[Truths.HeadTemperature, 0] = _head[Truths.RoomTemperature, 0];
        Set(Truths.InsertOutside, 40.06);
        Set(Truths.CounterboreBore, 40.00);
    }

    private void Skim(Bench bench, double deep)
    {
        double surface = WorkTable.Find("touch deck")!.Touches!(bench, -1);
        WorkTable.Find("cut deck")!.Cuts!(bench, -1, surface + deep);
    }

    private static void Do(Bench bench, string work, double to) => WorkTable.Find(work)!.Do!(bench, 0, to);

    private void Set(HeadDimension dimension, double value)
    {
        for (int i = 0; i < dimension.Places.Count; i++)
        {
            _head[dimension, 0, i] = value;
        }
    }

    private double True(string name) => _head[Truths.Find(name)!, 0];
}
