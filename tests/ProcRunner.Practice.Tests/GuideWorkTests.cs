using ProcRunner.Practice.Heads;
using ProcRunner.Quantities;

namespace ProcRunner.Practice.Tests;

/// <summary>Guides, counterbores and inserts: what each piece of work leaves, worked by hand (mm).</summary>
public class GuideWorkTests
{
    private const double Digits = 0.5e-9;

    // Guide 16 pressed 0.02 tight with its bore of 8, axes 40 apart: the hole of 10 beside it changes by 0.00075 (Lame and Kirsch by
    // hand in GeometryTests), smaller toward the guide and larger across it. On both sides; no other.
    [Fact]
    public void A_pressed_guide_pinches_both_its_neighbours()
    {
        WorkRig rig = Pressed(("axis to axis", 40));
        for (int position = 0; position < 5; position++)
        {
            rig.Set(Truths.GuideBore, position, 10);
        }

        rig.Do("press guide", 2, 24);

        foreach (int beside in new[] { 1, 3 })
        {
            Assert.Equal(9.99925, rig.True("guide bore", beside, 0), 1e-7);
            Assert.Equal(10.00075, rig.True("guide bore", beside, 1), 1e-7);
        }

        Assert.Equal(10, rig.True("guide bore", 0, 0), Digits);
        Assert.Equal(10, rig.True("guide bore", 4, 0), Digits);
    }

    // An insert of 40 with 30 inside, 0.08 tight: by Lame on radii 20 and 15 with E = 1, p = 0.04 (400 - 225) / (2 * 8000) = 0.0004375;
    // 60 away the stress is p (20/60)^2 = 0.0000486111, and a hole of 10 changes by 4 * 10 times that, 0.00194444.
    [Fact]
    public void A_pressed_insert_pinches_the_guides_beside_it()
    {
        WorkRig rig = new(("axis to axis", 60));
        rig.Set(Truths.InsertOutside, 2, 40);
        rig.Set(Truths.InsertInside, 2, 30);
        rig.Set(Truths.CounterboreBore, 2, 39.92);
        rig.Set(Truths.GuideBore, 1, 10);
        rig.Do("press insert", 2);

        Assert.Equal(9.99805556, rig.True("guide bore", 1, 0), 1e-7);
        Assert.Equal(10.00194444, rig.True("guide bore", 1, 1), 1e-7);
    }

    // Sized to 9 +- 0.02 all of it and +- 0.01 each place: a place deviates by root(0.0005), two of one guide by 0.01 root 2. A bore that
    // is larger already isn't made smaller.
    [Fact]
    public void A_sized_guide_comes_out_as_its_tool_errs_and_never_smaller()
    {
        double[] one = new double[3_000];
        double[] apart = new double[one.Length];
        WorkRig rig = new(("guide sizing", 0.02), ("guide sizing each", 0.01));
        for (int i = 0; i < one.Length; i++)
        {
            rig.Set(Truths.GuideBore, 0, 8);
            rig.Do("size guide", 0, 9);
            (one[i], apart[i]) = (rig.True("guide bore"), rig.True("guide bore") - rig.True("guide bore", 0, 4));
        }

        Assert.Equal(9, one.Average(), 4 * 0.02236 / Math.Sqrt(one.Length));
        Assert.Equal(0.0223607, MathNet.Numerics.Statistics.Statistics.StandardDeviation(one), 0.0012);
        Assert.Equal(0.0141421, MathNet.Numerics.Statistics.Statistics.StandardDeviation(apart), 0.0008);
        rig.Set(Truths.GuideBore, 0, 9.5);
        rig.Do("size guide", 0, 9);
        Assert.Equal(9.5, rig.True("guide bore"), Digits);
    }

    // Bar at 40 +- 0.02 and +- 0.01 each: as above. It is set once: the next cut deepens the counterbore and bores no more.
    [Fact]
    public void A_counterbore_is_as_wide_as_the_bar_was_set_and_as_deep_as_it_was_cut()
    {
        double[] one = new double[3_000];
        WorkRig rig = new(("boring", 0.02), ("boring each", 0.01));
        for (int i = 0; i < one.Length; i++)
        {
            rig.Set(Truths.CounterboreBore, 0, 30);
            rig.Do("set boring bar", 0, 40);
            rig.Cut("cut counterbore", 0, 7.1);
            one[i] = rig.True("counterbore bore", 0, 2);
        }

        Assert.Equal(40, one.Average(), 4 * 0.02236 / Math.Sqrt(one.Length));
        Assert.Equal(0.0223607, MathNet.Numerics.Statistics.Statistics.StandardDeviation(one), 0.0012);
        Assert.Equal(7.1, rig.True("counterbore depth", 0, 3), Digits);
        Assert.Equal(0, rig.Touch("touch face", 0), Digits);
        rig.Cut("cut counterbore", 0, 7.2);
        Assert.Equal(one[^1], rig.True("counterbore bore", 0, 2), Digits);
        Assert.Equal(7.2, rig.True("counterbore depth"), Digits);
    }

    [Theory]
    [InlineData("new guide in hand", "guide", "guide outside")]
    [InlineData("new insert in hand", "insert", "insert outside")]
    [InlineData("new valve", "valve", "stem")]
    [InlineData("fit spring", "spring", "spring free length")]
    public void A_new_part_brings_its_own_dimensions(string work, string part, string name)
    {
        WorkRig rig = new(WorkRig.Part(part, name, new Quantity(12.34m, Units.Millimetre)));
        rig.Do(work, 3);

        Assert.Equal(12.34, rig.True(name, 3), Digits);
        Assert.NotEqual(12.34, rig.True(name, 2), 1e-3);
    }

    [Fact]
    public void An_insert_made_to_measure_is_turned_to_the_number()
    {
        WorkRig rig = new();
        rig.Do("made insert in hand", 0, 41.5);

        Assert.Equal(41.5, rig.True("insert outside", 0, 0), Digits);
        Assert.Equal(41.5, rig.True("insert outside", 0, 1), Digits);
    }

    // The fresh insert's seat takes the old one's place, with its edges, unburnt, off its axis by the centring: the indicator's mean
    // square over 4,000 is 4 * 2 * 0.02 * 0.02, its root 0.0565685.
    [Fact]
    public void A_pressed_insert_brings_a_fresh_seat()
    {
        WorkRig rig = new(("insert centring", 0.02));
        rig.Head.SetCondition("seat", 0, "burnt");
        (rig.Head[Truths.FreshOutside, 0], rig.Head[Truths.FreshInside, 0]) = (33, 31);
        double squares = 0;
        for (int i = 0; i < 4_000; i++)
        {
            rig.Do("press insert", 0);
            squares += Math.Pow(rig.True("seat runout"), 2);
        }

        Assert.Equal("sound", rig.Head.Condition("seat", 0));
        Assert.Equal(33, rig.True("seat outside"), Digits);
        Assert.Equal(31, rig.True("seat inside"), Digits);
        Assert.Equal(0.0565685, Math.Sqrt(squares / 4_000), 0.0565685 * 0.03);
    }

    // A chilled guide is as warm as the head once it is pressed: 16 in 15.98 is 0.02 tight again.
    [Fact]
    public void What_was_pressed_in_takes_the_heads_warmth()
    {
        WorkRig rig = Pressed(("chill", 200));
        rig.Head[Truths.GuideExpansion, 2] = 11.4e-6;
        rig.Do("chill guide", 2);
        Assert.Equal(0.02 - (16 * 11.4e-6 * 200), rig.True("guide fit as it goes in", 2), 1e-8);
        rig.Do("press guide", 2, 24);

        Assert.Equal(0.02, rig.True("guide fit as it goes in", 2), 1e-8);
        Assert.Equal(7.99, rig.True("guide bore", 2), 1e-8);
    }

    private static WorkRig Pressed(params (string Name, double Value)[] tools)
    {
        WorkRig rig = new(tools);
        rig.Set(Truths.GuideOutside, 2, 16);
        rig.Set(Truths.GuideHole, 2, 15.98);
        rig.Set(Truths.GuideInside, 2, 8);
        rig.Head[Truths.HeadTemperature, 0] = rig.Head[Truths.RoomTemperature, 0];
        return rig;
    }
}
