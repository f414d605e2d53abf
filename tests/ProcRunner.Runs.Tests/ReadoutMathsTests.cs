using FsCheck;
using FsCheck.Fluent;
using ProcRunner.Quantities;
using ProcRunner.Shop;
using ProcRunner.ShopMath;

namespace ProcRunner.Runs.Tests;

public sealed class ReadoutMathsTests
{
    private static readonly Readout Plain = RigShop.Readout;

    public static TheoryData<bool, bool, bool, bool, bool> EveryWay
    {
        get
        {
            TheoryData<bool, bool, bool, bool, bool> all = [];
            for (int i = 0; i < 32; i++)
            {
                all.Add((i & 1) > 0, (i & 2) > 0, (i & 4) > 0, (i & 8) > 0, (i & 16) > 0);
            }

            return all;
        }
    }

    // Common practice, no source: measured 0.023, aim 0.052 leaves 0.029 from touch-off, or preset 0.023 and cut to 0.052.
    [Fact]
    public void Zeroed_at_touch_off_the_rest_is_cut_and_preset_the_aim_is_cut_to()
    {
        Exact measured = Exact.Of(RigShop.Q("0.023 in"));
        Exact aim = Exact.Of(RigShop.Q("0.052 in"));
        ReadoutMaths zeroed = new(Plain, 0);
        ReadoutMaths preset = new(Plain with { Preset = true }, 0);

        Assert.Equal("0.0000 in", zeroed.NumberToSet(measured).ToString());
        Assert.Equal(
            "0.0290 in",
            zeroed.NumberAt(zeroed.NumberToSet(measured), zeroed.TravelFor(measured, aim)).ToString()
        );
        Assert.Equal("0.0230 in", preset.NumberToSet(measured).ToString());
        Assert.Equal(
            "0.0520 in",
            preset.NumberAt(preset.NumberToSet(measured), preset.TravelFor(measured, aim)).ToString()
        );
    }

    [Theory]
    [InlineData(true, false, "0.0290 in")]
    [InlineData(false, false, "-0.0290 in")]
    [InlineData(true, true, "0.0580 in")]
    [InlineData(false, true, "-0.0580 in")]
    public void Sense_and_doubling_turn_and_double_the_number(bool deeper, bool doubled, string number)
    {
        ReadoutMaths maths = new(Plain with { GrowsDeeper = deeper, ShowsDiameter = doubled }, 0);
        Exact measured = Exact.Of(RigShop.Q("0.023 in"));

        Rational travel = maths.TravelFor(measured, Exact.Of(RigShop.Q("0.052 in")));

        Assert.Equal(number, maths.NumberAt(maths.NumberToSet(measured), travel).ToString());
    }

    // s = depth / cos(phi): 0.25 / cos 20 deg = 0.266044, plane geometry.
    [Fact]
    public void A_leaning_guide_travels_further_than_it_goes_deep()
    {
        ReadoutMaths maths = new(new Readout(Units.Millimetre, 0.001m, true, false, false, false), 20);
        Exact zero = Exact.Of(RigShop.Q("0 mm"));

        Rational travel = maths.TravelFor(zero, Exact.Of(RigShop.Q("0.25 mm")));

        Assert.Equal(0.266044m, travel.Round(6, Rounding.Nearest));
        Assert.Equal(0.25m, maths.DepthAfter(zero, travel).In(Units.Millimetre).Round(9, Rounding.Nearest));
    }

    // Recess wanted 1.00 mm, seat now 0.62, deck to lose 0.15 afterwards: 1.00 - 0.62 + 0.15 = 0.53 still to cut (the deck
    // takes recession off one for one; plane geometry).
    [Fact]
    public void What_the_deck_will_lose_is_cut_deeper_before()
    {
        ReadoutMaths maths = new(new Readout(Units.Millimetre, 0.005m, true, false, false, false), 0);
        Exact aim = Exact.Of(RigShop.Q("1.15 mm"));

        Rational travel = maths.TravelFor(Exact.Of(RigShop.Q("0.62 mm")), aim);

        Assert.Equal("0.530 mm", maths.NumberAt(RigShop.Q("0.000 mm"), travel).ToString());
    }

    /// <summary>
    /// For every set-up: cutting to the number shown never goes deeper than asked and ends within one step of it; and the
    /// number read back is the travel that led to it.
    /// </summary>
    [Theory]
    [MemberData(nameof(EveryWay))]
    public void Never_deeper_than_asked_and_within_one_step_of_it(
        bool inch,
        bool deeper,
        bool doubled,
        bool stepMode,
        bool preset
    )
    {
        Gen<(int Step, int Measured, int ToGo, int Angle)> gen =
            from step in Gen.Elements(1, 2, 5, 10)
            from measured in Gen.Choose(-400, 4000)
            from toGo in Gen.Choose(0, 4000)
            from angle in Gen.Elements(0, 0, 12, 20, 25)
            select (step, measured, toGo, angle);
        Prop.ForAll(
                gen.ToArbitrary(),
                p =>
                {
                    decimal unit = inch ? 0.0001m : 0.001m;
                    Readout readout = new(
                        inch ? Units.Inch : Units.Millimetre,
                        p.Step * unit,
                        deeper,
                        doubled,
                        stepMode,
                        preset
                    );
                    ReadoutMaths maths = new(readout, p.Angle);

                    // Measured with a gauge of the other unit, so that nothing falls on a step by itself.
                    Exact measured = Exact.Of(
                        new Quantity(p.Measured * 0.00037m, inch ? Units.Millimetre : Units.Inch)
                    );
                    Exact wanted = new(measured.Value + (Rational.FromDecimal(p.ToGo * 0.00113m)), measured.Dimension);
                    Quantity set = maths.NumberToSet(measured);
                    Quantity shown = maths.NumberAt(set, maths.TravelFor(measured, wanted));
                    Rational travel = maths.TravelAt(set, shown);
                    Exact reached = maths.DepthAfter(measured, travel);

                    Assert.True(reached.CompareTo(wanted) <= 0, "deeper than asked");
                    Assert.True(maths.TravelFor(reached, wanted) < maths.StepOfTravel, "short by a step or more");
                    Assert.True(
                        (Rational.FromDecimal(shown.Value) / Rational.FromDecimal(readout.Step)).Denominator.IsOne
                    );
                    Assert.Equal(shown, maths.NumberAt(set, travel));
                    Assert.Equal(maths.TravelFor(measured, reached), travel);
                    Assert.True(stepMode || !preset || p.Angle > 0 || IsDepth(maths, set, shown, reached));
                }
            )
            .Check(Config.QuickThrowOnFailure.WithMaxTest(60));
    }

    // Preset, the readout reads depth itself, to a step.
    private static bool IsDepth(ReadoutMaths maths, Quantity set, Quantity shown, Exact depth)
    {
        Rational factor = Rational.FromInteger(
            (maths.Readout.GrowsDeeper ? 1 : -1) * (maths.Readout.ShowsDiameter ? 2 : 1)
        );
        Rational off = (Rational.FromDecimal(shown.Value) - (factor * depth.In(maths.Readout.Unit))).Abs();
        return set.Unit == maths.Readout.Unit && off <= Rational.FromDecimal(maths.Readout.Step);
    }
}
