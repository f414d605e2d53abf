using ProcRunner.Lessons;
using ProcRunner.Practice.Chances;
using ProcRunner.Practice.Heads;
using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Practice.Tests;

/// <summary>Everything that follows on a practice head from what it was given, worked by hand (mm, degrees, N).</summary>
public class TruthTests
{
    private const double Digits = 0.5e-9;

    // kPa in an inch of mercury, conventional (NIST SP 811 (2008), App. B.8).
    private const double InHg = 3.386389;

    // Depth 1.2 + 0.8 = 2.0. Stem height 120 + 2 - 85 = 37; bare 37 + 4 = 41 (the retainer sits 4 below the tip); installed
    // 41 - 1.5; gap 41 - 30; to the seal 11 - 8; coil bind 39.5 - 8 - 25. The spring has 250 N at 40 and 650 N at 32, 50 N a mm:
    // 250 + 0.5 * 50 at 39.5 and 250 + 8.5 * 50 at 31.5. 46.3 over the pocket less a shim of 3.2 and a stem of 37 leaves 6.1.
    [Theory]
    [InlineData("stem height", 37)]
    [InlineData("bare height", 41)]
    [InlineData("installed height", 39.5)]
    [InlineData("retainer gap", 11)]
    [InlineData("retainer-to-seal", 3)]
    [InlineData("coil-bind margin", 6.5)]
    [InlineData("seat load", 275)]
    [InlineData("open load", 675)]
    [InlineData("lash", 6.1)]
    public void Heights_springs_and_lash(string name, double expected)
    {
        PracticeHead head = Draw(0);
        Give(head, ("seat depth", 1.2), ("valve drop", 0.8), ("valve length", 120), ("tip to retainer", -4));
        Give(head, ("spring pocket", 85), ("seal top", 30), ("valve lift", 8), ("spring solid height", 25));
        Give(head, ("spring test closed", 40), ("spring test open", 32), ("shim stack", 1.5));
        Give(
            head,
            ("spring load closed", 250),
            ("spring load open", 650),
            ("cam over pocket", 46.3),
            ("cam shim", 3.2)
        );

        Assert.Equal(expected, True(head, name), 1e-8);
    }

    // Tip ground by 0.2: stem height falls by it, direct lash grows by it; a seat cut 0.1 deeper takes 0.1 of the lash.
    [Fact]
    public void Lash_grows_with_a_ground_tip_and_falls_with_a_sunk_valve()
    {
        PracticeHead head = Draw(0);
        double lash = True(head, "lash");
        head[Truths.ValveLength, 0] -= 0.2;
        Assert.Equal(lash + 0.2, True(head, "lash"), Digits);
        head[Truths.SeatDepth, 0] += 0.1;
        Assert.Equal(lash + 0.1, True(head, "lash"), Digits);
    }

    // Smallest bore 8.00 less largest stem 7.99, largest 8.06 less smallest 7.96; along 8.02 - 8.00, across 8.06 - 8.02, out of round
    // 8.06 - 8.02 at the bottom. Guide 13.03 to 13.05 in 12.99 to 13.01, insert 40.06 to 40.08 in 39.98 to 40.01, out of round
    // by 0.03 at the bottom; counterbore 7.05 at its deepest less an insert of 7.01 at its highest.
    [Theory]
    [InlineData("least clearance", 0.01)]
    [InlineData("most clearance", 0.10)]
    [InlineData("taper along", 0.02)]
    [InlineData("taper across", 0.04)]
    [InlineData("guide out of round", 0.04)]
    [InlineData("least guide fit", 0.02)]
    [InlineData("most guide fit", 0.06)]
    [InlineData("least insert fit", 0.05)]
    [InlineData("most insert fit", 0.10)]
    [InlineData("insert set-back", 0.04)]
    [InlineData("counterbore out of round", 0.03)]
    [InlineData("face to seat angle", 0.5)]
    public void Clearances_fits_and_forms(string name, double expected)
    {
        PracticeHead head = Draw(0);
        Set(head, "guide bore", 8.01, 8.03, 8.00, 8.02, 8.02, 8.06);
        Set(head, "stem", 7.98, 7.97, 7.96, 7.97, 7.99, 7.98);
        Set(head, "guide outside", 13.03, 13.04, 13.03, 13.05);
        Set(head, "guide hole", 13.00, 13.01, 12.99, 13.00);
        Set(head, "insert outside", 40.06, 40.08);
        Set(head, "counterbore bore", 40.00, 40.01, 39.98, 40.01);
        Set(head, "counterbore depth", 7.03, 7.05, 7.04, 7.03);
        Set(head, "insert height", 7.00, 7.01);
        Give(head, ("seat angle", 45), ("face angle", 44.5));

        Assert.Equal(expected, True(head, name), Digits);
    }

    // The guide leans 20 degrees: 2.0 along it is 2 cos 20 = 1.879385242 square to the deck (0.9396926208 from tables). A deck that
    // lost 0.25 takes that off, this place of the valve stands 0.03 deeper. A sink of 0.266044 brings the 0.25 back.
    [Fact]
    public void Recession_at_a_leaning_guide()
    {
        PracticeHead head = Draw(20, ("deck bow along", 0));
        Give(head, ("seat depth", 1.2), ("valve drop", 0.8));
        Set(head, "around the valve", 0, 0, 0.03, 0);
        HeadDimension recession = Truths.Find("recession")!;
        Assert.Equal(1.909385242, head[recession, 0, 2], Digits);

        head.Deck.Skim(head.Deck.Highest, 0.25, 0, 0, new double[25]);
        Assert.Equal(1.659385242, head[recession, 0, 2], Digits);
        Assert.Equal(1.629385242, head[recession, 0, 1], Digits);
        head[Truths.SeatDepth, 0] += 0.266044;
        Assert.Equal(1.909385242, head[recession, 0, 2], 1e-6);
    }

    // A chamber 0.10 and 0.05 over a plane that the deck lies 0.25 under stands out 0.35 and 0.30, an injector 1.00 over it 1.25.
    [Fact]
    public void What_stands_out_of_the_deck_does_so_by_as_much_as_the_deck_lost()
    {
        PracticeHead head = Draw(0);
        Set(head, "pre-chamber stand", 0.10, 0.05);
        Give(head, ("injector stand", 1.00));
        head.Deck.Skim(head.Deck.Highest, 0.25, 0, 0, new double[25]);

        Assert.Equal(0.35, head[Truths.Find("pre-chamber protrusion")!, 0, 0], Digits);
        Assert.Equal(0.30, head[Truths.Find("pre-chamber protrusion")!, 0, 1], Digits);
        Assert.Equal(1.25, True(head, "injector protrusion"), Digits);
    }

    // Bowed by 0.09 along, the deck's ends lie 0.09 under its middle and a quarter of the way along it lies 0.0225 under it. Of four
    // cylinders the second is a third of the way along, a third from that quarter to the middle: two thirds of 0.0225.
    [Theory]
    [InlineData(0, -0.09)]
    [InlineData(2, -0.015)]
    [InlineData(4, -0.015)]
    [InlineData(6, -0.09)]
    public void Each_cylinder_has_the_deck_above_it(int position, double height) =>
        Assert.Equal(height, Draw(0, ("deck bow along", 0.09)).DeckHeightAt(position), Digits);

    // The right side stands 0.02 over the left; a twist lifts one corner of each side and lowers the other.
    [Fact]
    public void A_wedge_is_one_side_against_the_other() =>
        Assert.Equal(
            0.02,
            Draw(0, ("deck tilt across", 0.02), ("deck tilt along", 0.05), ("deck twist", 0.08))[
                Truths.Find("deck wedge")!,
                -1
            ],
            Digits
        );

    // A pit of 0.10 in a flat deck: 0.05 leaves half of it, though all of the deck was cut; 0.10 leaves nothing.
    [Fact]
    public void A_deck_isnt_clean_while_a_pit_is_left()
    {
        PracticeHead head = Draw(0, ("pit as found", 0.10));
        Assert.Equal("old", head.Condition("deck surface", -1));
        head.Deck.Skim(0, 0.05, 0, 0, new double[25]);
        Assert.Equal(0.05, head[Truths.Find("deepest pit")!, 0], Digits);
        Assert.Equal("old", head.Condition("deck surface", -1));
        head.Deck.Skim(0, 0.10, 0, 0, new double[25]);
        Assert.Equal("sound", head.Condition("deck surface", -1));
    }

    // Pump 25 inHg, less 1 that leaks, 2 of dirt, 20 a mm of runout (0.03 and 0.04 off: 0.1), 30 a mm of clearance above 0.1
    // (0.15: 1.5), and 10 for a burnt seat. How much is lost by what is invented; that each of them loses is common practice.
    [Theory]
    [InlineData("sound", 18.5)]
    [InlineData("burnt", 8.5)]
    public void Vacuum_is_what_the_pump_reaches_less_what_leaks(string seat, double expected)
    {
        PracticeHead head = Draw(0);
        Give(head, ("pump vacuum", 25 * InHg), ("leak", 1 * InHg), ("dirt", 2 * InHg));
        Give(head, ("seat off along", 0.03), ("seat off across", 0.04));
        Set(head, "guide bore", 8.15, 8.15, 8.15, 8.15, 8.15, 8.15);
        Set(head, "stem", 8, 8, 8, 8, 8, 8);
        head.SetCondition("seat", 0, seat);

        Assert.Equal(expected, True(head, "seat vacuum") / InHg, 1e-5);
        Assert.Equal(expected, True(head, "final vacuum") / InHg, 1e-5);
    }

    // The face runs from 36 to 40, middle 38, half 2: a band of 37.4 to 39.0 lies 0.1 of a half out, 38.0 to 39.0 by 0.25, 36.8 to
    // 38.4 by 0.2 in; one over the face's edge, or with its middle 0.75 out, is at an edge.
    [Theory]
    [InlineData(39.0, 37.4, "middle")]
    [InlineData(39.0, 38.0, "outside the middle")]
    [InlineData(38.4, 36.8, "inside the middle")]
    [InlineData(40.2, 37.4, "at an edge")]
    [InlineData(38.6, 35.9, "at an edge")]
    [InlineData(39.9, 39.1, "at an edge")]
    public void Blue_shows_where_the_band_lies(double outside, double inside, string where)
    {
        PracticeHead head = Draw(0);
        Give(head, ("face outside", 40), ("face inside", 36), ("seat outside", outside), ("seat inside", inside));

        Assert.Equal(where, head.Condition("contact", 0));
    }

    // 2,000 heads of 3.0 +- 0.4 and each place +- 0.3: a place deviates by 0.5, what two places of one head differ by is 0.3 root 2.
    [Fact]
    public void Heads_differ_as_their_file_says_and_so_do_their_places()
    {
        TruthTable table = new();
        table.Values[new TruthKey("guide bore", null)] = new TrueValue([Mm(3.0m)], Mm(0.4m), Mm(0.3m), default);
        PracticeHead[] heads =
        [
            .. Enumerable
                .Range(0, 2_000)
                .Select(n => PracticeHead.Draw(Demo.Binding.Plan.Head, table, new Chance((ulong)n))),
        ];

        double[] first = [.. heads.Select(h => h[Truths.GuideBore, 3, 0])];
        double[] apart = [.. heads.Select(h => h[Truths.GuideBore, 3, 0] - h[Truths.GuideBore, 3, 5])];
        Assert.Equal(3.0, first.Average(), 4 * 0.5 / Math.Sqrt(2_000));
        Assert.Equal(0.5, MathNet.Numerics.Statistics.Statistics.StandardDeviation(first), 0.5 * 0.07);
        Assert.Equal(0.3 * Math.Sqrt(2), MathNet.Numerics.Statistics.Statistics.StandardDeviation(apart), 0.3 * 0.1);
    }

    // Nicked in a fifth: 8,000 valves, within four deviations of a binomial share.
    [Fact]
    public void A_condition_comes_as_often_as_its_file_says()
    {
        TruthTable table = new();
        table.Conditions[new TruthKey("valve neck", null)] = new TrueCondition("nicked", 0.2, default);
        int nicked = Enumerable
            .Range(0, 1_000)
            .Select(n => PracticeHead.Draw(Demo.Binding.Plan.Head, table, new Chance((ulong)n)))
            .Sum(h => Enumerable.Range(0, 8).Count(i => h.Condition("valve neck", i) == "nicked"));

        Assert.InRange(nicked, 1_600 - (4 * 35.8), 1_600 + (4 * 35.8));
    }

    private static Quantity Mm(decimal value) => new(value, Units.Millimetre);

    // A head of the demo's with a deck as said and guides that lean.
    private static PracticeHead Draw(decimal lean, params (string Name, double Value)[] deck)
    {
        TruthTable table = new();
        foreach ((string name, double value) in deck)
        {
            table.Values[new TruthKey(name, null)] = new TrueValue([Mm((decimal)value)], null, null, default);
        }

        HeadSpec spec = Demo.Binding.Plan.Head;
        spec = spec with { Positions = [.. spec.Positions.Select(p => p with { GuideAngle = lean })] };
        return PracticeHead.Draw(spec, table, new Chance(1));
    }

    private static void Give(PracticeHead head, params (string Name, double Value)[] values)
    {
        foreach ((string name, double value) in values)
        {
            Set(head, name, value);
        }
    }

    private static void Set(PracticeHead head, string name, params double[] values)
    {
        for (int i = 0; i < values.Length; i++)
        {
            head[Truths.Find(name)!, 0, i] = values[i];
        }
    }

    private static double True(PracticeHead head, string name) => head[Truths.Find(name)!, 0];
}
