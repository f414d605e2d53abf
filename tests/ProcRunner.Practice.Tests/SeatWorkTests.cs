using ProcRunner.Practice.Heads;

namespace ProcRunner.Practice.Tests;

/// <summary>Valves, seats, deck and what is put together at the end, worked by hand (mm, degrees).</summary>
public class SeatWorkTests
{
    private const double Digits = 0.5e-9;

    // A seat 0.03 off one way and 0.04 the other is 0.05 off; at 45 degrees the cone goes 0.05 deeper before the cutter touches all
    // round, at 60 degrees 0.05 tan 60 = 0.086602540; then a clean-up of 0.01. The cone widens by 2 * 0.06 * cot 45.
    [Theory]
    [InlineData(45, 0.06)]
    [InlineData(60, 0.096602540)]
    public void A_seat_is_cut_until_it_comes_in_all_round(double angle, double deeper)
    {
        WorkRig rig = new(("seat clean-up", 0.01));
        (rig.Head[Truths.OffAlong, 0], rig.Head[Truths.OffAcross, 0]) = (0.03, 0.04);
        rig.Head[Truths.SeatAngle, 0] = angle;
        double depth = rig.True("seat depth");
        double outside = rig.True("seat outside");
        rig.Head.SetCondition("seat", 0, "burnt");
        rig.Do("touch seat", 0);

        Assert.Equal(depth + deeper, rig.True("seat depth"), Digits);
        Assert.Equal(outside + (2 * deeper / Math.Tan(angle * Math.PI / 180)), rig.True("seat outside"), 1e-8);
        Assert.Equal(0, rig.True("seat runout"), Digits);
        Assert.Equal("sound", rig.Head.Condition("seat", 0));
    }

    // The cutter follows a pilot bent by 0.03 that leans by 0.04: the seat comes out 0.05 off, the indicator shows 0.10. Another pilot
    // cuts it true.
    [Fact]
    public void A_seat_comes_out_on_its_pilots_axis()
    {
        WorkRig rig = new();
        (rig.Head[Truths.PilotBend, 0], rig.Head[Truths.PilotLean, 0]) = (0.03, 0.04);
        rig.Do("touch seat", 0);
        Assert.Equal(0.10, rig.True("seat runout"), Digits);

        rig.Do("true pilot", 0);
        rig.Do("touch seat", 0);
        Assert.Equal(0, rig.True("seat runout"), Digits);
    }

    // Pilot centring 0.02 each way: root mean square of the indicator 2 * 0.02 root 2.
    [Fact]
    public void A_good_pilot_leaves_its_own_play()
    {
        WorkRig rig = new(("pilot centring", 0.02));
        double squares = 0;
        for (int i = 0; i < 4_000; i++)
        {
            rig.Do("touch seat", 0);
            squares += Math.Pow(rig.True("seat runout"), 2);
        }

        Assert.Equal(0.0565685, Math.Sqrt(squares / 4_000), 0.0565685 * 0.03);
    }

    // The face runs from 36 to 40. A band of 1.5 at 45 degrees is 1.060660172 on the radius, so that its diameters differ by twice that
    // and lie that far on either side of 38; on an intake 0.3 further out.
    [Theory]
    [InlineData(1, 39.060660172, 36.939339828)]
    [InlineData(0, 39.360660172, 37.239339828)]
    public void A_seat_is_narrowed_to_its_width_where_the_face_lies(int position, double outside, double inside)
    {
        WorkRig rig = new(("contact shift of intakes", 0.3));
        (rig.Head[Truths.FaceOutside, position], rig.Head[Truths.FaceInside, position]) = (40, 36);
        (rig.Head[Truths.SeatOutside, position], rig.Head[Truths.SeatInside, position]) = (42, 34);
        rig.Head[Truths.SeatAngle, position] = 45;
        rig.Do("narrow seat", position, 1.5);

        Assert.Equal(outside, rig.True("seat outside", position), 1e-8);
        Assert.Equal(inside, rig.True("seat inside", position), 1e-8);
        Assert.Equal(1.5, rig.True("seat width", position), 1e-8);
    }

    // A cut that ends above the seat takes nothing.
    [Fact]
    public void Nothing_comes_back_that_was_cut()
    {
        WorkRig rig = new();
        double depth = rig.True("seat depth");
        rig.Cut("cut seat", 0, depth - 0.1);

        Assert.Equal(depth, rig.True("seat depth"), Digits);
        Assert.Equal(depth, rig.Touch("touch seat", 0), Digits);
    }

    [Fact]
    public void Wiping_and_washing_take_dirt_away()
    {
        WorkRig rig = new();
        foreach (string work in new[] { "clean seat", "touch seat", "wash head" })
        {
            (rig.Head[Truths.Dirt, 0], rig.Head[Truths.DirtHeight, 0]) = (5, 0.1);
            rig.Do(work, 0);
            Assert.Equal((0, 0), (rig.True("dirt"), rig.True("dirt height")));
        }
    }

    [Fact]
    public void A_new_valve_isnt_nicked_and_a_refaced_one_has_the_angle_of_the_grinder()
    {
        WorkRig rig = new(("reface angle", 44.5), ("least reface", 0.05));
        rig.Head.SetCondition("valve neck", 0, "nicked");
        rig.Head[Truths.FaceRunout, 0] = 0.2;
        rig.Do("reface valve", 0);
        Assert.Equal("nicked", rig.Head.Condition("valve neck", 0));
        Assert.Equal(44.5, rig.True("face angle"), Digits);
        Assert.Equal(0, rig.True("face runout"), Digits);
        Assert.Equal(0.15, rig.True("face taken off"), Digits);

        rig.Do("new valve", 0);
        Assert.Equal("sound", rig.Head.Condition("valve neck", 0));
    }

    // Touched off and cut 0.20 under the highest spot, set up leaning: 1,000 set-ups of +- 0.02 front to rear, corners half of that.
    [Fact]
    public void A_skim_leaves_the_set_ups_lean_its_form_and_its_finish()
    {
        double[] apart = new double[1_000];
        double[] rough = new double[apart.Length];
        for (int i = 0; i < apart.Length; i++)
        {
            WorkRig rig = new(("levelling", 0.02), ("finish left", 0.002));
            for (int times = 0; times <= i % 10; times++)
            {
                rig.Do("level head", -1);
            }

            rig.Head[Truths.LostBefore, 0] = 0;
            rig.Cut("cut deck", -1, rig.Touch("touch deck", -1) + 2 + (0.001 * i));
            apart[i] = rig.True("deck thickness", -1, 0) - rig.True("deck thickness", -1, 2);
            rough[i] = rig.True("deck finish", -1);
        }

        Assert.All(rough, r => Assert.Equal(0.002, r, Digits));
        Assert.Equal(10, apart.Select(a => Math.Round(a, 9)).Distinct().Count());
        WorkRig form = new(("deck form left", 0.02));
        form.Cut("cut deck", -1, form.Touch("touch deck", -1) + 2);
        Assert.InRange(form.True("deck range", -1), 0.02, 0.2);
    }

    // The tool touches the highest spot: cut 0.15 from there, that spot is 0.15 lower, wherever it was, and touched again it is touched
    // there.
    [Fact]
    public void A_skim_is_counted_from_the_highest_spot()
    {
        WorkRig rig = new();
        double highest = rig.Head.Deck.Highest;
        rig.Cut("cut deck", -1, rig.Touch("touch deck", -1) + 0.15);
        Assert.Equal(highest - 0.15, rig.Head.Deck.Highest, Digits);
        Assert.Equal(0.15, rig.True("skim taken", -1), Digits);
        rig.Cut("cut deck", -1, rig.Touch("touch deck", -1) + 0.10);
        Assert.Equal(highest - 0.25, rig.Head.Deck.Highest, Digits);
        rig.BeginAnew("cut deck");
        rig.Cut("cut deck", -1, rig.Touch("touch deck", -1) + 0.05);
        Assert.Equal(0.05, rig.True("skim taken", -1), Digits);
    }

    // Drawer in steps of 0.4: 0.9 wanted is 0.8, 1.0 rounds to 0.8 (even) and 1.1 to 1.2; without steps as wanted, never below 0.
    [Theory]
    [InlineData(0.4, 0.9, 0.8)]
    [InlineData(0.4, 1.1, 1.2)]
    [InlineData(0, 0.9, 0.9)]
    [InlineData(0, -0.3, 0)]
    public void Shims_come_from_the_drawer(double step, double wanted, double stack)
    {
        WorkRig rig = new(("shim step", step));
        rig.Do("fit shims", 0, wanted);
        rig.Do("fit cam shim", 0, 2.5);

        Assert.Equal(stack, rig.True("shim stack"), Digits);
        Assert.Equal(2.5, rig.True("cam shim"), Digits);
    }

    // A new chamber that stands 0.04 over the deck stands 0.04 over it, wherever the deck is by then.
    [Fact]
    public void A_new_chamber_stands_over_the_deck_as_it_is()
    {
        WorkRig rig = new(
            WorkRig.Part(
                "pre-chamber",
                "pre-chamber stand",
                new ProcRunner.Quantities.Quantity(0.04m, ProcRunner.Quantities.Units.Millimetre)
            )
        );
        rig.Cut("cut deck", -1, rig.Touch("touch deck", -1) + 0.3);
        rig.Do("fit pre-chamber", 0);

        Assert.Equal(0.04, rig.True("pre-chamber protrusion"), Digits);
    }

    // Warmed by 150 K, then let come to the room, to within 2 K (one deviation) over 2,000 times.
    [Fact]
    public void Heat_goes_in_and_out_again()
    {
        WorkRig rig = new(("oven", 150), ("room error", 2));
        double room = rig.True("room temperature", -1);
        rig.Do("warm head", -1);
        Assert.Equal(room + 150, rig.True("head temperature", -1), Digits);
        double[] left = new double[2_000];
        for (int i = 0; i < left.Length; i++)
        {
            rig.Do("let head come to room", -1);
            left[i] = rig.True("head temperature", -1) - room;
        }

        Assert.Equal(0, left.Average(), 4 * 2 / Math.Sqrt(left.Length));
        Assert.Equal(2, MathNet.Numerics.Statistics.Statistics.StandardDeviation(left), 2 * 0.07);
    }
}
