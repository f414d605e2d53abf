using MathNet.Numerics.Statistics;
using ProcRunner.Lessons;
using ProcRunner.Practice.Chances;
using ProcRunner.Practice.Gauges;
using ProcRunner.Practice.Heads;
using ProcRunner.Quantities;
using ProcRunner.Shop;

namespace ProcRunner.Practice.Tests;

/// <summary>Gauges show what is true with the errors they were given, no more and no less.</summary>
public class GaugeTests
{
    private static readonly PracticeHead Head = PracticeHead.Draw(
        Demo.Binding.Plan.Head,
        Demo.Setup.Heads,
        new Chance(1)
    );

    // 20,000 readings: mean error is the bias, deviation the root of the sum of squares of spread, feel and step / sqrt(12)
    // (JCGM 100:2008, 4.3.7 and 5.1.2).
    [Fact]
    public void Bias_spread_feel_and_resolution_are_as_given()
    {
        GaugeCharacter character = Character(bias: 0.0003, spread: 0.0004, feel: 0.0003);
        double[] errors = Errors(character, 20_000);
        double expected = Math.Sqrt((0.0004 * 0.0004) + (0.0003 * 0.0003) + (0.0001 * 0.0001 / 12));

        Assert.Equal(0.0003, errors.Mean(), 4 * expected / Math.Sqrt(20_000));
        Assert.Equal(expected, errors.StandardDeviation(), expected * 0.03);
    }

    [Fact]
    public void A_faultless_gauge_is_off_by_its_resolution_only() =>
        Assert.All(Errors(Character(), 500), error => Assert.InRange(error, -0.00005001, 0.00005001));

    // A wrong turn a tenth of the time: 2,000 readings, within four deviations of a binomial share.
    [Fact]
    public void Now_and_then_it_is_a_whole_turn_off()
    {
        double[] errors = Errors(Character(wrongTurns: 0.1), 2_000);
        int off = errors.Count(e => Math.Abs(Math.Abs(e) - 0.025) < 0.0001);

        Assert.Equal(errors.Length, off + errors.Count(e => Math.Abs(e) < 0.0001));
        Assert.InRange(off, 200 - (4 * 13.4), 200 + (4 * 13.4));
    }

    // A turn off it is as often too much as too little, and says so of itself; whole steps of its resolution is all it shows.
    [Fact]
    public void It_is_a_turn_off_either_way_in_whole_steps()
    {
        PracticeGauge gauge = new(Character(wrongTurns: 0.5), 77);
        GaugeReading[] readings =
        [
            .. Enumerable.Range(0, 400).Select(n => gauge.Read(Head, Truths.ValveLength, 0, [0], n)[0]),
        ];

        Assert.All(readings, r => Assert.Equal(0, r.Shown.Value % 0.0001m));
        Assert.All(readings, r => Assert.Equal(Math.Abs(r.Error) > 0.1, r.IsTurnOff && r.IsSlip));
        Assert.InRange(readings.Count(r => r.Error > 0.1), 60, 140); // 100 +- 4 deviations of 8.7
        Assert.InRange(readings.Count(r => r.Error < -0.1), 60, 140);
    }

    [Fact]
    public void A_slip_is_known_for_what_it_is()
    {
        PracticeHead head = PracticeHead.Draw(Demo.Binding.Plan.Head, Demo.Setup.Heads, new Chance(3));
        HeadDimension recession = Truths.Find("recession")!;
        HeadDimension runout = Truths.Find("seat runout")!;
        GaugeCharacter dirty = Character() with { DirtySeats = 1, DirtBy = 0.01 };
        GaugeCharacter bent = Character() with { PilotBend = 0.001 };

        Assert.True(new PracticeGauge(dirty, 1).Read(head, recession, 0, [0], 0)[0].IsDirty);
        Assert.True(new PracticeGauge(bent, 1).Read(head, runout, 0, [0], 0)[0].IsBent);
        Assert.False(new PracticeGauge(bent, 1).Read(head, recession, 0, [0], 0)[0].IsSlip);
        Assert.False(new PracticeGauge(Character(), 1).Read(head, runout, 0, [0], 0)[0].IsSlip);
        (head[Truths.DirtHeight, 0], head[Truths.PilotBend, 0]) = (0.1, 0.1);
        Assert.True(new PracticeGauge(Character(), 1).Read(head, recession, 0, [0], 0)[0].IsDirty);
        Assert.True(new PracticeGauge(Character(), 1).Read(head, runout, 0, [0], 0)[0].IsBent);
        GaugeReading stem = new PracticeGauge(Character(), 1).Read(head, Truths.Find("stem height")!, 0, [0], 0)[0];
        Assert.True(stem.IsDirty);
        Assert.Equal(-0.1, stem.Error, 0.002);
    }

    [Fact]
    public void One_that_was_not_zeroed_is_off_by_as_much_at_every_place()
    {
        PracticeGauge gauge = new(Character(notZeroed: 1, notZeroedBy: 0.004), 5);
        GaugeReading[] readings = gauge.Read(Head, Truths.Stem, 0, [0, 1, 2, 3, 4, 5], 0);

        Assert.All(readings, r => Assert.True(r.IsNotZeroed));
        Assert.All(readings, r => Assert.InRange(r.Error / 25.4, 0.00395, 0.00405));
    }

    [Fact]
    public void A_reading_is_the_same_whatever_was_read_before_it()
    {
        GaugeCharacter character = Character(spread: 0.001);
        PracticeGauge one = new(character, 9);
        PracticeGauge other = new(character, 9);
        _ = other.Read(Head, Truths.Margin, 2, [0], 0);
        _ = other.Read(Head, Truths.Stem, 1, [0], 3);

        Assert.Equal(one.Read(Head, Truths.Stem, 1, [0], 7), other.Read(Head, Truths.Stem, 1, [0], 7));
        Assert.NotEqual(one.Read(Head, Truths.Stem, 1, [0], 7), one.Read(Head, Truths.Stem, 1, [0], 8));
    }

    // A pilot bent by 0.05 in the direction of a seat 0.02 off its axis: 2 * (0.02 - 0.05) and, turned, 2 * (0.02 + 0.05).
    [Fact]
    public void A_bent_pilot_shows_another_runout_when_it_is_turned()
    {
        PracticeHead head = PracticeHead.Draw(Demo.Binding.Plan.Head, Demo.Setup.Heads, new Chance(3));
        HeadDimension runout = Truths.Find("seat runout")!;
        (head[Truths.OffAlong, 0], head[Truths.OffAcross, 0], head[Truths.PilotBend, 0]) = (0.02, 0, 0.05);
        GaugeReading[] readings = new PracticeGauge(Character(), 1).Read(head, runout, 0, [0, 1], 0);

        Assert.Equal(0.06, Exact.Of(readings[0].Shown).Value.ToDouble(), 0.002);
        Assert.Equal(0.14, Exact.Of(readings[1].Shown).Value.ToDouble(), 0.002);
        Assert.Equal(0.04, readings[0].True, 1e-9);
    }

    [Fact]
    public void Dirt_under_the_valve_makes_it_stand_shallower()
    {
        PracticeHead head = PracticeHead.Draw(Demo.Binding.Plan.Head, Demo.Setup.Heads, new Chance(3));
        HeadDimension recession = Truths.Find("recession")!;
        head[Truths.DirtHeight, 0] = 0.05;
        GaugeReading reading = new PracticeGauge(Character(), 1).Read(head, recession, 0, [0], 0)[0];

        Assert.Equal(-0.05, reading.Error, 0.002);
    }

    // The same pilot, bent by 0.05, as the gauge's own.
    [Fact]
    public void A_gauge_brings_its_own_bent_pilot()
    {
        PracticeHead head = PracticeHead.Draw(Demo.Binding.Plan.Head, Demo.Setup.Heads, new Chance(3));
        (head[Truths.OffAlong, 0], head[Truths.OffAcross, 0]) = (0.02, 0);
        GaugeCharacter bent = Character() with { PilotBend = 0.05 / 25.4 };
        GaugeReading[] readings = new PracticeGauge(bent, 1).Read(head, Truths.Find("seat runout")!, 0, [0, 1], 0);

        Assert.Equal(0.06, Exact.Of(readings[0].Shown).Value.ToDouble(), 0.002);
        Assert.Equal(0.14, Exact.Of(readings[1].Shown).Value.ToDouble(), 0.002);
    }

    // A fifth of the time 0.004 in of dirt: 2,000 readings with the valve in, within four deviations of a binomial share; a stem,
    // which lies on no seat, never.
    [Fact]
    public void A_dirty_seat_makes_it_read_too_little_now_and_then()
    {
        GaugeCharacter dirty = Character() with { DirtySeats = 0.2, DirtBy = 0.004 };
        PracticeGauge gauge = new(dirty, 77);
        double[] errors =
        [
            .. Enumerable
                .Range(0, 2_000)
                .Select(n => gauge.Read(Head, Truths.Find("recession")!, 0, [0], n)[0].Error / 25.4),
        ];
        int off = errors.Count(e => Math.Abs(e + 0.004) < 0.0001);

        Assert.Equal(errors.Length, off + errors.Count(e => Math.Abs(e) < 0.0001));
        Assert.InRange(off, 400 - (4 * 17.9), 400 + (4 * 17.9));
        Assert.InRange(gauge.Read(Head, Truths.Stem, 0, [0], 0)[0].Error / 25.4, -0.0001, 0.0001);
    }

    // ISO 1: lengths are meant at 20 degC. 127 mm of aluminium (21.5e-6 per K, handbook value) 10 K warm is 0.027305 mm too long.
    [Fact]
    public void A_warm_head_measures_too_long()
    {
        PracticeHead head = PracticeHead.Draw(Demo.Binding.Plan.Head, Demo.Setup.Heads, new Chance(3));
        (head[Truths.HeadExpansion, 0], head[Truths.HeadTemperature, 0]) = (21.5e-6, 303.15);
        head[Truths.GuideHole, 0] = 127;
        GaugeReading reading = new PracticeGauge(Character(), 1).Read(head, Truths.GuideHole, 0, [0], 0)[0];

        Assert.Equal(0.027305, reading.Error, 0.0013);
    }

    private static double[] Errors(GaugeCharacter character, int count)
    {
        PracticeGauge gauge = new(character, 77);
        return
        [
            .. Enumerable.Range(0, count).Select(n => gauge.Read(Head, Truths.ValveLength, 0, [0], n)[0].Error / 25.4),
        ];
    }

    private static GaugeCharacter Character(
        double bias = 0,
        double spread = 0,
        double feel = 0,
        double wrongTurns = 0,
        double notZeroed = 0,
        double notZeroedBy = 0
    )
    {
        Quantity step = new(0.0001m, Units.Inch);
        Gauge gauge = new("T", "for a test", "test", step, step, new Quantity(0.025m, Units.Inch), null);
        return new GaugeCharacter(gauge, bias, spread, feel, wrongTurns, notZeroed, notZeroedBy);
    }
}
