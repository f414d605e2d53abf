using ProcRunner.Runs.Prompts;

namespace ProcRunner.Runs.Tests;

/// <summary>A typing error is corrected at once; both stay in the trail, and a correction is no way round anything.</summary>
public sealed class CorrectionTests
{
    [Fact]
    public void It_needs_a_reason_and_something_to_correct()
    {
        Rig rig = Work.OneReading("{low: 0.046, high: 0.058, origin: maker}");
        rig.Refuses(new RunCommand.Correct(rig.At("depth 1I"), "0.050", "mistyped"));
        rig.Enter("depth 1I", "0.050");
        rig.Refuses(new RunCommand.Correct(rig.At("depth 1I"), "0.051", " "));

        IReadOnlyList<RunEvent> events = rig.Correct("depth 1I", "0.051");

        Assert.Equal("mistyped", events.OfType<RunEvent.EntryCorrected>().Single().Reason);
        Assert.Equal("0.051 in", rig.Value("depth", "1I").Value.ToString());
        Assert.Equal(2, rig.Record("depth 1I").Readings.Count);
        CorrectedEntry correction = Assert.Single(rig.State.Corrections);
        Assert.Equal(("0.050 in", "0.051 in", "mistyped"), (correction.Was, correction.Became, correction.Reason));
    }

    [Fact]
    public void A_correction_that_is_doubtful_is_questioned_and_changes_nothing()
    {
        Rig rig = Work.OneReading("{low: 0.046, high: 0.058, origin: maker}");
        rig.Enter("depth 1I", "0.050");

        Assert.IsType<RunEvent.EntryQuestioned>(Assert.Single(rig.Correct("depth 1I", "51")));

        Assert.Equal("0.050 in", rig.Value("depth", "1I").Value.ToString());
        Assert.Equal(StepStanding.Done, rig.Standing("depth 1I"));
    }

    [Fact]
    public void A_mistyped_pass_is_corrected_as_often_as_it_takes()
    {
        Rig rig = CutWork.Make();
        rig.Zero("1I", "0.023");
        rig.Enter("cut 1I", "0.010");
        rig.Enter("cut 1I", "0.0220");
        rig.Correct("cut 1I", "0.0200");
        rig.Correct("cut 1I", "0.0120");

        Assert.Equal(0.012m, rig.Prompt("cut 1I").Progress!.Travel.Value);
        Assert.Equal("0.0240 in", rig.Target("cut 1I"));
        rig.Refuses(new RunCommand.Correct(rig.At("cut 1I"), "0.009", "mistyped"));
    }

    [Fact]
    public void In_step_mode_a_corrected_pass_counts_once()
    {
        Rig rig = CutWork.Make(RigShop.Readout with { StepMode = true });
        rig.Zero("1I", "0.023");
        rig.Enter("cut 1I", "0.010");
        rig.Enter("cut 1I", "0.0120");
        rig.Correct("cut 1I", "0.0100");
        rig.Correct("cut 1I", "0.0110");

        Assert.Equal(0.021m, rig.Prompt("cut 1I").Progress!.Travel.Value);
        Assert.Equal("0.0030 in", rig.Target("cut 1I"));
    }

    [Fact]
    public void A_corrected_approach_reading_is_still_an_approach_reading()
    {
        Rig rig = CutWork.Make();
        rig.Zero("1I", "0.023");
        rig.Pass("1I");
        rig.Enter("cut 1I", "0.0474");

        TakenReading reading = rig.Correct("cut 1I", "0.0470").OfType<RunEvent.ReadingTaken>().Single().Reading;

        Assert.Equal(Verdict.Short, reading.Judgement.Verdict);
        Assert.Equal("0.0470 in", reading.Predicted.ToString());
        Assert.Equal(StepStanding.InHand, rig.Standing("cut 1I"));
        Assert.Equal("0.0290 in", rig.Target("cut 1I"));
        reading = rig.Correct("cut 1I", "0.0440").OfType<RunEvent.ReadingTaken>().Single().Reading;
        Assert.Equal(Verdict.Short, reading.Judgement.Verdict); // under low, with metal still to go: nothing is wrong
        Assert.True(reading.Disagrees);
    }

    [Fact]
    public void A_corrected_pass_after_a_corrected_reading_still_counts_from_the_zero()
    {
        Rig rig = CutWork.Make();
        rig.Zero("1I", "0.023");
        rig.Pass("1I");
        rig.Enter("cut 1I", "0.0474");
        rig.Correct("cut 1I", "0.0470");
        rig.Enter("cut 1I", "0.0285");
        rig.Correct("cut 1I", "0.0290");

        Assert.Equal(Verdict.In, rig.Read("cut 1I", "0.052").Judgement.Verdict);
    }

    [Fact]
    public void A_corrected_reading_of_a_step_passed_long_ago_opens_what_was_worked_out_from_it()
    {
        Rig rig = new(SmallWork.Procedure, SmallWork.Head);
        rig.Until("guides / measured");

        rig.Correct("stem 1I", "0.3410");

        Assert.True(rig.Value("clearance", "1I").Stale);
        Assert.False(rig.Value("clearance", "1E").Stale);
        rig.Sign("teardown / measured");
        Assert.Equal(StepView.Open, rig.View("guide bore 1I"));
        rig.Refuses(rig.SignOf(rig.At("guides / measured"), RigShop.Lead));
    }

    [Fact]
    public void Correcting_an_old_entry_doesnt_make_it_the_latest()
    {
        Rig rig = new(SmallWork.Procedure, SmallWork.Head);
        rig.Until("surface / checked");
        string last = rig.Value("recession", "1I").Value.ToString();

        rig.Correct("teardown / recession 1I", "0.0310 0.0310");

        Assert.Equal(last, rig.Value("recession", "1I").Value.ToString());
        Assert.Equal("0.0310 in", rig.Value("recession", "1I").AsFound.ToString());
        Assert.False(rig.Value("recession", "1I").Stale);
    }

    [Fact]
    public void Correcting_a_stale_entry_doesnt_make_it_fresh()
    {
        Rig rig = new(SmallWork.Procedure, SmallWork.Head);
        rig.Until("surface / skim the deck");
        rig.Enter("skim the deck", "done");
        Assert.True(rig.Value("recession", "1I").Stale);

        rig.Correct("seat cut / recession 1I", "0.0571 0.0571");

        Assert.True(rig.Value("recession", "1I").Stale);
        Assert.Equal(StepStanding.Done, rig.Standing("seat cut / recession 1I"));
    }

    [Fact]
    public void What_the_head_came_with_is_the_corrected_figure_and_what_was_judged_by_it_opens()
    {
        Rig rig = new(SmallWork.Procedure, SmallWork.Head);
        rig.Until("seat 1I");
        Assert.True(rig.Value("cut allowed").AsFound!.Value.SameAs(RigShop.Q("0.010 in")));

        rig.Correct("teardown / thickness", "3.918");

        Assert.Equal("3.918 in", rig.Value("thickness").AsFound.ToString());
        Assert.True(rig.Value("planned skim").Stale); // its window reads [as found.cut allowed]
        rig.Sign("teardown / measured");
        Assert.Equal(StepView.Open, rig.View("planned skim"));
        Assert.Equal(Verdict.Out, rig.Read("planned skim", "0.0035").Judgement.Verdict);
    }

    [Fact]
    public void Of_a_corrected_part_only_the_right_one_is_fitted()
    {
        Rig rig = new(SmallWork.Procedure, SmallWork.Head);
        rig.Until("new guide 1E");
        rig.Enter("new guide 1E", "G-7, lot 12");
        rig.Correct("new guide 1E", "G-8, lot 12");

        Assert.Equal("G-8", Assert.Single(rig.State.Parts).Number);
    }

    [Fact]
    public void A_corrected_entry_of_a_signed_stage_asks_for_the_signature_again()
    {
        Rig rig = new(SmallWork.Procedure, SmallWork.Head);
        rig.Until("guides / crack test 1I");
        Assert.Equal(StepView.Done, rig.View("teardown / measured"));

        rig.Correct("teardown / recession 1I", "0.0310 0.0310");

        Assert.Equal(StepView.Open, rig.View("teardown / measured"));
        rig.EnterRefused("crack test 1I", "sound");
        rig.Refuses(new RunCommand.Correct(rig.At("teardown / measured"), "x", "mistyped"));
        rig.Sign("teardown / measured");
        rig.Enter("crack test 1I", "sound");
    }

    [Fact]
    public void A_set_zero_is_not_corrected_but_set_again()
    {
        Rig rig = CutWork.Make();
        rig.Enter("seat 1I", "0.023");
        rig.Correct("seat 1I", "0.024");
        Assert.Equal(Awaited.NumberSet, rig.Prompt("seat 1I").Awaits);
        rig.Enter("seat 1I", "0");

        rig.Refuses(new RunCommand.Correct(rig.At("seat 1I"), "0.024", "mistyped"));
        Assert.Equal("0.0230 in", rig.Target("cut 1I")); // 0.052 - 0.024 less the allowance
    }
}
