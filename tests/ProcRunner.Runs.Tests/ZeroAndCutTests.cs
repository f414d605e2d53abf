using ProcRunner.Quantities;
using ProcRunner.Runs.Prompts;
using ProcRunner.Shop;

namespace ProcRunner.Runs.Tests;

/// <summary>From touch-off to depth: approach, correction, what is left, and what stops it.</summary>
public sealed class ZeroAndCutTests
{
    // Common practice, no source: measured 0.023 with aim 0.052 of 0.046 to 0.058: 0.029 to go, or preset and cut to 0.052.
    [Theory]
    [InlineData(false, "0.0000 in", "0.0240 in", "0.0290 in")]
    [InlineData(true, "0.0230 in", "0.0470 in", "0.0520 in")]
    public void Approach_then_measure_then_the_aim(bool preset, string set, string approach, string aim)
    {
        Rig rig = CutWork.Make(RigShop.Readout with { Preset = preset });
        rig.Enter("seat 1I", "0.023");

        Assert.Equal(Awaited.NumberSet, rig.Prompt("seat 1I").Awaits);
        Assert.Equal(set, rig.Prompt("seat 1I").NumberToSet.ToString());
        Assert.Contains("grows deeper", rig.Prompt("seat 1I").Readout, StringComparison.Ordinal);
        rig.EnterRefused("seat 1I", "0.0005 in");
        rig.Enter("seat 1I", set);
        Assert.Equal(approach, rig.Target("cut 1I"));
        Assert.True(rig.Prompt("cut 1I").Target!.StopsShort);
        rig.Pass("1I");
        Assert.Equal(Awaited.Reading, rig.Prompt("cut 1I").Awaits);

        Assert.Equal(Verdict.Short, rig.Read("cut 1I", "0.047").Judgement.Verdict);
        Assert.Equal(aim, rig.Target("cut 1I"));
        Assert.False(rig.Prompt("cut 1I").Target!.StopsShort);
        rig.Pass("1I");
        Assert.Equal(Verdict.In, rig.Read("cut 1I", "0.052").Judgement.Verdict);

        Assert.Equal(StepView.Done, rig.View("cut 1I"));
        rig.EnterRefused("cut 1I", aim);
    }

    [Fact]
    public void The_correction_counts_from_what_was_measured_and_there_is_one_approach_only()
    {
        Rig rig = CutWork.Make();
        rig.Zero("1I", "0.023");
        rig.Pass("1I");

        // Measured 0.0007 shallower than the readout says, within what they may differ by: 0.0240 + (0.052 - 0.0463).
        TakenReading reading = rig.Read("cut 1I", "0.0463");

        Assert.False(reading.Disagrees);
        Assert.Equal("0.0470 in", reading.Predicted.ToString());
        Assert.Equal("0.0295 in", rig.Target("cut 1I")); // 0.0297, rounded shallow to 0.0005
        Assert.False(rig.Prompt("cut 1I").Target!.StopsShort);
    }

    [Theory]
    [InlineData("0.046", false)] // 0.006 left: more than the allowance
    [InlineData("0.047", true)] // exactly the allowance
    [InlineData("0.0495", true)]
    public void With_less_than_the_allowance_left_there_is_no_approach(string measured, bool straight)
    {
        Rig rig = CutWork.Make();
        rig.Zero("1E", measured);

        Assert.Equal(!straight, rig.Prompt("cut 1E").Target!.StopsShort);
    }

    [Theory]
    [InlineData("0.0001 in", "0.0005 in")] // one step of the readout is more than the shop's allowance
    [InlineData("0.010 in", "0.0100 in")]
    public void The_approach_stops_short_by_the_largest_of_allowance_uncertainty_and_step(string allowance, string left)
    {
        Rig rig = CutWork.Make(allowance: allowance);
        rig.Zero("1E", "0.020");

        decimal stops = 0.032m - rig.Prompt("cut 1E").Target!.Show.Value;

        // The uncertainty, root of 2 x 0.00005^2 + 0.0005^2, is a little over a step; shallow rounding adds less than one.
        Assert.InRange(stops, RigShop.Q(left).Value, RigShop.Q(left).Value + 0.0006m);
    }

    [Fact]
    public void What_is_left_is_told_after_every_pass()
    {
        Rig rig = CutWork.Make();
        rig.Zero("1I", "0.023");

        rig.Enter("cut 1I", "0.010");
        Assert.Equal(0.014m, rig.Prompt("cut 1I").Target!.Left.Value);
        rig.Enter("cut 1I", "0.020");
        Assert.Equal(0.004m, rig.Prompt("cut 1I").Target!.Left.Value);
        Assert.Equal(Awaited.Readout, rig.Prompt("cut 1I").Awaits);
        rig.Enter("cut 1I", "0.024");
        Assert.Equal(Awaited.Reading, rig.Prompt("cut 1I").Awaits);
    }

    [Fact]
    public void A_pass_shallower_than_the_last_or_no_length_is_refused()
    {
        Rig rig = CutWork.Make();
        rig.Zero("1I", "0.023");
        rig.Enter("cut 1I", "0.020");

        Assert.Contains("shallower", rig.EnterRefused("cut 1I", "0.019").Why, StringComparison.Ordinal);
        rig.EnterRefused("cut 1I", "24 deg");
        rig.EnterRefused("cut 1I", "");
        rig.Enter("cut 1I", "0.0225");
    }

    [Theory]
    [InlineData("0.052")] // at the aim already
    [InlineData("0.0518")] // nearer than a step of the readout
    [InlineData("0.055")] // past it, within high
    public void Nothing_is_cut_that_would_go_deeper_than_the_aim(string measured)
    {
        Rig rig = CutWork.Make();
        rig.Zero("1I", measured);

        Assert.Equal("nothing", rig.Target("cut 1I"));
        Assert.Equal(Awaited.Reading, rig.Prompt("cut 1I").Awaits);
        Assert.Equal(Verdict.In, rig.Read("cut 1I", measured).Judgement.Verdict);
        Assert.Equal(StepStanding.Done, rig.Standing("cut 1I"));
    }

    [Theory]
    [InlineData("0.0525", Verdict.In)]
    [InlineData("0.058", Verdict.In)] // exactly on high
    [InlineData("0.0581", Verdict.Out)]
    public void Past_the_aim_within_high_is_accepted_deeper_is_out_until_a_disposition(string text, Verdict verdict)
    {
        Rig rig = CutWork.Make(cutMore: "ways-on: [measure again, concession, scrap]");
        rig.Zero("2E", "0.048");
        rig.Pass("2E");

        Assert.Equal(verdict, rig.Read("cut 2E", text).Judgement.Verdict);
        Assert.Equal(verdict == Verdict.In ? StepPhase.Done : StepPhase.Out, rig.Phase("cut 2E"));
        rig.EnterRefused("cut 2E", "0.052");
        rig.Refuses(new RunCommand.EndCut(rig.At("cut 2E")));
        if (verdict == Verdict.Out)
        {
            rig.EnterRefused("contact 2E", "middle");
            rig.Way("cut 2E", "measure again");

            // Asking to measure again is no way to end the cut on the reading that was refused.
            rig.Refuses(new RunCommand.EndCut(rig.At("cut 2E")));
            Assert.Equal(Verdict.In, rig.Read("cut 2E", "0.0575").Judgement.Verdict);
            Assert.Equal(2, rig.Record("cut 2E").Readings.Count);
        }
    }

    [Theory]
    [InlineData("0.0471", false)]
    [InlineData("0.0480", false)] // exactly what they may differ by
    [InlineData("0.0481", true)]
    [InlineData("0.0459", true)]
    public void Predicted_and_measured_must_meet_before_more_is_cut(string text, bool disagrees)
    {
        Rig rig = CutWork.Make();
        rig.Zero("1I", "0.023");
        rig.Pass("1I");

        TakenReading reading = rig.Read("cut 1I", text);

        Assert.Equal("0.0470 in", reading.Predicted.ToString());
        Assert.Equal(disagrees, reading.Disagrees);
        Assert.Equal(disagrees ? StepView.Open : StepView.Done, rig.View("seat 1I"));
        if (disagrees)
        {
            rig.EnterRefused("cut 1I", "0.0290");
            rig.Zero("1I", text);
            Assert.Equal("0.0000 in", rig.Prompt("cut 1I").Progress!.Zero.Set.ToString());
        }
    }

    [Fact]
    public void Without_a_stated_agreement_the_uncertainty_of_gauge_and_readout_decides()
    {
        // Root of 2 x 0.00005^2 + 0.0005^2 = 0.000505 (JCGM 100:2008, 5.1.2).
        Rig rig = CutWork.Make(agreement: "");
        rig.Zero("1I", "0.023");
        rig.Pass("1I");
        Assert.False(rig.Read("cut 1I", "0.0465").Disagrees);

        rig.Zero("1E", "0.023");
        rig.Pass("1E");
        Assert.True(rig.Read("cut 1E", "0.0464").Disagrees);
    }

    [Fact]
    public void A_changed_edge_voids_the_zero_and_nothing_is_cut_from_it()
    {
        Rig rig = CutWork.Make();
        rig.Zero("1I", "0.023");
        rig.Enter("cut 1I", "0.010");

        rig.Do(new RunCommand.Report("cutter edge", At.Head));

        Assert.Equal(StepView.Open, rig.View("seat 1I"));
        Assert.Contains("seat", rig.EnterRefused("cut 1I", "0.024").Why, StringComparison.Ordinal);
        rig.Zero("1I", "0.033");
        Assert.Equal("0.0140 in", rig.Target("cut 1I"));
    }

    [Fact]
    public void A_reading_that_is_due_needs_no_zero()
    {
        Rig rig = CutWork.Make();
        rig.Zero("1I", "0.023");
        rig.Pass("1I");
        rig.Do(new RunCommand.Report("cutter edge", At.Head));

        Assert.Equal(StepView.Open, rig.View("cut 1I"));
        rig.Enter("cut 1I", "0.047");

        Assert.Equal(StepView.Open, rig.View("seat 1I")); // there is more to cut, so now it does
    }

    [Fact]
    public void Setting_another_zero_voids_this_one_but_not_one_whose_cut_is_done()
    {
        Rig rig = CutWork.Make();
        rig.Zero("1I", "0.052");
        rig.Enter("cut 1I", "0.052");
        rig.Zero("1E", "0.023");
        rig.Zero("2I", "0.023");

        Assert.Equal(StepView.Open, rig.View("seat 1E"));
        Assert.Equal(StepView.Done, rig.View("seat 1I"));
        Assert.Equal(StepView.Done, rig.View("seat 2I"));
        rig.EnterRefused("cut 1E", "0.024");
    }

    [Fact]
    public void A_valve_that_changed_since_is_measured_again_before_more_is_cut()
    {
        Rig rig = CutWork.Make();
        rig.Zero("1I", "0.023");
        rig.Pass("1I");
        rig.Enter("cut 1I", "0.047");
        rig.Do(new RunCommand.Report("valves swapped", At.Head));

        Assert.Equal(Awaited.Reading, rig.Prompt("cut 1I").Awaits);
        rig.Refuses(new RunCommand.EndCut(rig.At("cut 1I")));
        rig.Enter("cut 1I", "0.044");

        // 0.024 travelled, 0.008 to go from what the new valve measures.
        Assert.Equal("0.0320 in", rig.Target("cut 1I"));
    }

    [Fact]
    public void A_zero_whose_reading_went_stale_is_measured_again_before_it_is_set()
    {
        Rig rig = CutWork.Make(RigShop.Readout with { Preset = true });
        rig.Enter("seat 1I", "0.023");
        rig.Do(new RunCommand.Report("valves swapped", At.Head));

        Assert.Equal(Awaited.Reading, rig.Prompt("seat 1I").Awaits);
        rig.Zero("1I", "0.021");

        Assert.Equal("0.0210 in", rig.Prompt("cut 1I").Progress!.Zero.Set.ToString());
    }

    [Fact]
    public void Lifting_early_measures_and_the_approach_is_still_to_come()
    {
        Rig rig = CutWork.Make();
        rig.Zero("1I", "0.023");
        rig.Enter("cut 1I", "0.010");

        rig.Do(new RunCommand.LiftToMeasure(rig.At("cut 1I")));
        rig.Refuses(new RunCommand.LiftToMeasure(rig.At("cut 1I")));
        Assert.Equal(Verdict.Short, rig.Read("cut 1I", "0.033").Judgement.Verdict);

        Assert.Equal("0.0240 in", rig.Target("cut 1I"));
        Assert.True(rig.Prompt("cut 1I").Target!.StopsShort);
    }

    [Theory]
    [InlineData("0.0459", false)] // under low
    [InlineData("0.046", true)]
    [InlineData("0.050", true)]
    public void A_cut_may_end_early_within_its_window_only(string text, bool ends)
    {
        Rig rig = CutWork.Make(agreement: "agree-within: \"'0.1 in'\"");
        rig.Zero("1I", "0.023");
        rig.Refuses(new RunCommand.EndCut(rig.At("cut 1I")));
        rig.Pass("1I");
        rig.Refuses(new RunCommand.EndCut(rig.At("cut 1I")));
        rig.Enter("cut 1I", text);

        Decision decision = rig.Try(new RunCommand.EndCut(rig.At("cut 1I")));

        Assert.Equal(ends, decision is Decision.Accepted);
        Assert.Equal(ends ? StepStanding.Done : StepStanding.InHand, rig.Standing("cut 1I"));
        Assert.Equal(ends ? Verdict.In : Verdict.Short, rig.Value("recession", "1I").Judgement.Verdict);
        rig.Refuses(new RunCommand.EndCut(rig.At("contact 1I")));
    }

    [Fact]
    public void A_cut_cant_end_early_over_a_worked_out_value_that_is_out()
    {
        Rig rig = CutWork.Make(
            cutMore: "works-out: {left over: {is: \"[recession] - '0.040 in'\", window: {low: \"'0.009 in'\", origin: shop}}}"
        );
        rig.Zero("1I", "0.023");
        rig.Pass("1I");
        TakenReading reading = rig.Read("cut 1I", "0.047");

        Assert.True(reading.Good);
        Assert.Contains(
            "left over",
            rig.Refuses(new RunCommand.EndCut(rig.At("cut 1I"))).Why,
            StringComparison.Ordinal
        );
        rig.Enter("cut 1I", "0.0275");
        rig.Do(new RunCommand.LiftToMeasure(rig.At("cut 1I")));
        rig.Enter("cut 1I", "0.0505");
        rig.Do(new RunCommand.EndCut(rig.At("cut 1I")));
    }

    public static TheoryData<bool, bool, bool, bool> EveryReadout
    {
        get
        {
            TheoryData<bool, bool, bool, bool> all = [];
            for (int i = 0; i < 16; i++)
            {
                all.Add((i & 1) > 0, (i & 2) > 0, (i & 4) > 0, (i & 8) > 0);
            }

            return all;
        }
    }

    /// <summary>The same depth comes out whatever the readout's way: the tests' own tool travels as the numbers say.</summary>
    [Theory]
    [MemberData(nameof(EveryReadout))]
    public void From_touch_off_to_the_aim_by_every_kind_of_readout(
        bool deeper,
        bool doubled,
        bool stepMode,
        bool preset
    )
    {
        foreach (Unit unit in new[] { Units.Inch, Units.Millimetre })
        {
            decimal step = unit == Units.Inch ? 0.0005m : 0.01m;
            Readout readout = new(unit, step, deeper, doubled, stepMode, preset);
            Rig rig = CutWork.Make(readout);
            Tool tool = new(readout, 0.023m);
            rig.Enter("seat 1I", "0.023 in");
            tool.Set(rig.Prompt("seat 1I").NumberToSet!.Value);
            rig.Enter("seat 1I", tool.Shows.ToString());
            for (int i = 0; i < 9 && rig.Standing("cut 1I") != StepStanding.Done; i++)
            {
                Prompt prompt = rig.Prompt("cut 1I");
                if (prompt.Awaits == Awaited.Readout)
                {
                    Assert.Equal(stepMode, prompt.ToDo.StartsWith("reset the readout to 0", StringComparison.Ordinal));
                    tool.ResetIfSteps();
                    tool.CutTo(prompt.Target!.Show);
                    rig.Enter("cut 1I", tool.Shows.ToString());
                }
                else
                {
                    rig.Enter("cut 1I", tool.Depth);
                }
            }

            Assert.Equal(StepStanding.Done, rig.Standing("cut 1I"));
            decimal depth = rig.Value("recession", "1I").Value.Value;
            decimal most = unit == Units.Inch ? step : step / 25.4m;
            Assert.InRange(depth, 0.052m - most, 0.052m);
            Assert.All(rig.Record("cut 1I").Readings, reading => Assert.False(reading.Disagrees));
        }
    }

    // A guide that leans: 20 degrees, so the tool travels depth / cos(20 deg).
    [Fact]
    public void On_a_leaning_guide_the_readout_counts_along_the_axis()
    {
        Rig rig = CutWork.Make(angle: "20 deg");
        rig.Zero("1I", "0.023");

        // (0.029 - 0.005) / cos 20 deg = 0.02554 or, the allowance being travel, 0.029 / 0.939693 - 0.005 = 0.025861.
        Assert.Equal("0.0255 in", rig.Target("cut 1I"));
        rig.Pass("1I");
        TakenReading reading = rig.Read("cut 1I", "0.047");
        Assert.Equal(0.046962m, Math.Round(reading.Predicted!.Value.Value, 6)); // 0.023 + 0.0255 cos 20 deg
        Assert.Equal("0.0305 in", rig.Target("cut 1I")); // 0.0255 + 0.005 / cos 20 deg = 0.030821
    }

    [Theory]
    [InlineData(
        "stem height",
        "{low: 1.545, aim: 1.560, high: 1.580, origin: maker}",
        "1.540",
        "0.0150 in",
        "1.555",
        "1.560"
    )]
    [InlineData(
        "counterbore depth",
        "{low: 0.310, aim: 0.312, high: 0.314, origin: maker}",
        "0.2",
        "0.1070 in",
        "0.307",
        "0.312"
    )]
    public void Zero_and_cut_work_on_whatever_reading_is_declared(
        string name,
        string limit,
        string measured,
        string approach,
        string then,
        string done
    )
    {
        Rig rig = CutWork.Make(name: name, limit: limit);
        rig.Zero("1I", measured);

        Assert.Equal(approach, rig.Target("cut 1I"));
        rig.Pass("1I");
        rig.Enter("cut 1I", then);
        rig.Pass("1I");
        Assert.Equal(Verdict.In, rig.Read("cut 1I", done).Judgement.Verdict);
    }

    [Fact]
    public void A_surface_that_is_touched_counts_as_zero()
    {
        Rig rig = new(
            Work.Procedure(
                "depth: {of: position, measured-in: length, rests-on: [seat], why: it matters}",
                "- zero: face\n- cut: depth\n  stop-short: \"'0.005 in'\"\n  moves: [seat]"
            ),
            Work.Head("depth: {low: 0.310, aim: 0.312, high: 0.314, origin: maker}")
        );

        rig.Enter("face 1I", "0");

        Assert.Equal("0.3070 in", rig.Target("depth 1I"));
    }

    [Fact]
    public void Without_a_readout_nothing_is_zeroed_or_cut()
    {
        Rig rig = CutWork.Make();
        rig.Enter("seat 1I", "0.023");
        rig.Shop = rig.Shop with { Readout = null };

        Assert.Contains("readout", rig.EnterRefused("seat 1I", "0").Why, StringComparison.Ordinal);
    }

    /// <summary>A spindle with a readout, as the operator sees it.</summary>
    private sealed class Tool(Readout readout, decimal depthInInches)
    {
        private readonly decimal _perUnit = readout.Unit == Units.Inch ? 1m : 25.4m;
        private decimal _depth = depthInInches;
        private decimal _base;
        private decimal _baseDepth = depthInInches;

        private decimal Slope => (readout.GrowsDeeper ? 1m : -1m) * (readout.ShowsDiameter ? 2m : 1m) * _perUnit;

        public Quantity Shows => new(Math.Round(_base + (Slope * (_depth - _baseDepth)), 6), readout.Unit);

        public string Depth => new Quantity(Math.Round(_depth, 6), Units.Inch).ToString();

        public void Set(Quantity number) => (_base, _baseDepth) = (number.Value, _depth);

        public void ResetIfSteps()
        {
            if (readout.StepMode)
            {
                (_base, _baseDepth) = (0, _depth);
            }
        }

        public void CutTo(Quantity number) => _depth = _baseDepth + ((number.Value - _base) / Slope);
    }
}
