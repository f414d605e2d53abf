using ProcRunner.Practice.Chances;
using ProcRunner.Practice.Heads;
using ProcRunner.Practice.Works;

namespace ProcRunner.Practice.Tests;

/// <summary>What work does to a head, against hand-worked figures (mm).</summary>
public class HeadTests
{
    private const double Digits = 0.5e-9;
    private readonly PracticeHead _head = PracticeHead.Draw(Demo.Binding.Plan.Head, Demo.Setup.Heads, new Chance(11));

    // The valve sinks by the seat's cut, and by the face's loss over cos 45; stem height and installed height grow alike.
    [Fact]
    public void Sink_shows_in_every_height()
    {
        double recession = True("recession");
        double stem = True("stem height");
        double height = True("installed height");
        double gap = True("retainer gap");
        _head[Truths.SeatDepth, 0] += 0.10;
        _head[Truths.ValveDrop, 0] += Geometry.Sink(0.10, 45);

        Assert.Equal(recession + 0.2414213562, True("recession"), 1e-8);
        Assert.Equal(stem + 0.2414213562, True("stem height"), 1e-8);
        Assert.Equal(height + 0.2414213562, True("installed height"), 1e-8);
        Assert.Equal(gap + 0.2414213562, True("retainer gap"), 1e-8);
    }

    // Grinding the tip lowers the stem height alone: the retainer's groove stays where it was.
    [Fact]
    public void A_ground_tip_lowers_the_stem_height_and_not_the_spring()
    {
        double stem = True("stem height");
        double height = True("installed height");
        _head[Truths.ValveLength, 0] -= 0.2;
        _head[Truths.TipToRetainer, 0] -= 0.2;

        Assert.Equal(stem - 0.2, True("stem height"), Digits);
        Assert.Equal(height, True("installed height"), Digits);
    }

    // A flat deck that loses 0.25: thickness and recession fall by 0.25, a pre-chamber stands out by 0.25 more.
    [Fact]
    public void A_skim_moves_all_that_is_measured_from_the_deck()
    {
        DeckForm deck = new(99.0, 0, 0, 0, 0, 0, pit: 0.10);
        deck.Skim(deck.Highest, 0.25, 0, 0, new double[25]);

        Assert.Equal(98.75, deck.Thickness(0), Digits);
        Assert.Equal(-0.25, deck.HeightAt(0.3, 0.5), Digits);
        Assert.Equal(0, deck.Pit, Digits);
        Assert.False(deck.HasOldSurface);
    }

    // A deck bowed by 0.10 along: its middle stands 0.10 over its ends. A skim of 0.08 leaves old surface at the ends, and one of
    // 0.15 takes 0.15 in the middle and 0.05 at the ends.
    [Fact]
    public void A_warped_deck_loses_most_where_it_stands_highest()
    {
        DeckForm deck = new(99.0, 0, 0, 0.10, 0, 0, pit: 0);

        Assert.Equal(0.10, deck.Range, Digits);
        Assert.Equal(0.10, deck.LineRange(1), Digits);
        Assert.Equal(0, deck.LineRange(4), Digits);
        deck.Skim(deck.Highest, 0.08, 0, 0, new double[25]);
        Assert.True(deck.HasOldSurface);
        deck.Skim(0, 0.15, 0, 0, new double[25]);
        Assert.False(deck.HasOldSurface);
        Assert.Equal(99 - 0.15, deck.Thickness(4), Digits);
        Assert.Equal(99 - 0.15, deck.Thickness(0), Digits);
        Assert.Equal(0, deck.Range, Digits);
    }

    // 250 N at 40 and 450 N at 30: 20 N a mm, so 350 N at 35.
    [Fact]
    public void A_spring_is_straight_between_its_two_loads()
    {
        (_head[Truths.TestClosed, 0], _head[Truths.TestOpen, 0]) = (40, 30);
        (_head[Truths.LoadClosed, 0], _head[Truths.LoadOpen, 0]) = (250, 450);
        double height = True("installed height");
        _head[Truths.SpringPocket, 0] += height - 35;

        Assert.Equal(350, True("seat load"), 1e-9);
    }

    [Fact]
    public void Work_by_name_changes_the_head_it_is_done_on()
    {
        Bench bench = new(_head, Demo.Binding.Plan.Head, Demo.Setup, 1);
        double margin = _head[Truths.Margin, 0];
        double drop = _head[Truths.ValveDrop, 0];
        WorkTable.Find("reface valve")!.Do!(bench, 0, 0);
        double taken = _head[Truths.FaceTaken, 0];

        Assert.True(taken > 0.02);
        Assert.Equal(
            drop + (taken / Math.Cos(_head[Truths.FaceAngle, 0] * Math.PI / 180)),
            _head[Truths.ValveDrop, 0],
            Digits
        );
        Assert.Equal(margin - (_head[Truths.ValveDrop, 0] - drop), _head[Truths.Margin, 0], Digits);
    }

    // An offset of 0.03 on a 45 degree seat wants 0.03 more depth before the cutter touches all round; runout then is what the
    // pilot leaves.
    [Fact]
    public void A_seat_off_its_guide_is_cut_deeper_until_it_comes_in()
    {
        Bench bench = new(
            _head,
            Demo.Binding.Plan.Head,
            Demo.Setup with
            {
                Tools = new Dictionary<string, ProcRunner.Quantities.Quantity>(),
            },
            1
        );
        (_head[Truths.OffAlong, 1], _head[Truths.OffAcross, 1]) = (0.03, 0);
        double depth = _head[Truths.SeatDepth, 1];
        WorkTable.Find("touch seat")!.Do!(bench, 1, 0);

        Assert.Equal(depth + 0.03, _head[Truths.SeatDepth, 1], Digits);
        Assert.Equal(0, _head[Truths.OffAlong, 1], Digits);
    }

    private double True(string name) => _head[Truths.Find(name)!, 0];
}
