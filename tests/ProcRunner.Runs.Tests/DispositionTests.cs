namespace ProcRunner.Runs.Tests;

/// <summary>What can be done about a result out of spec, by whom, and what stays on the record.</summary>
public sealed class DispositionTests
{
    private const string Ways = """
        - measure: depth
          ways-on:
          - measure again
          - concession
          - scrap
        - do: polish
        """;

    private static Rig Out(string steps = Ways)
    {
        Rig rig = Work.OneReading("{low: 0.046, high: 0.058, origin: maker}", steps: steps);
        rig.Enter("depth 1I", "0.060");
        return rig;
    }

    [Fact]
    public void Nothing_goes_on_at_that_place_until_one_is_chosen_and_elsewhere_it_does()
    {
        Rig rig = Out();

        Assert.Contains("out of spec", rig.EnterRefused("depth 1I", "0.050").Why, StringComparison.Ordinal);
        Assert.Contains("depth", rig.EnterRefused("polish 1I", "done").Why, StringComparison.Ordinal);
        rig.Refuses(rig.SignOf(rig.At("measured"), RigShop.Lead));
        rig.Refuses(new RunCommand.LeaveOut(rig.At("depth 1I"), "no"));
        rig.Refuses(new RunCommand.TakeWay(rig.At("depth 1I"), "look away", "", null));
        rig.Refuses(new RunCommand.TakeWay(rig.At("depth 1E"), "measure again", "", null));
        rig.Enter("depth 1E", "0.050");
    }

    [Fact]
    public void Measured_again_all_readings_are_kept_and_the_last_counts()
    {
        Rig rig = Out();
        rig.Way("depth 1I", "measure again");
        rig.Refuses(rig.WayOf("depth 1I", "measure again"));
        rig.Enter("depth 1I", "0.059");
        rig.Way("depth 1I", "measure again");
        rig.Enter("depth 1I", "0.058");

        Assert.Equal(
            ["0.060 in", "0.059 in", "0.058 in"],
            rig.Record("depth 1I").Readings.Select(r => r.Value.ToString())
        );
        Assert.Equal("0.058 in", rig.Value("depth", "1I").Value.ToString());
        Assert.Equal(StepStanding.Done, rig.Standing("depth 1I"));
    }

    [Theory]
    [InlineData("concession", RigShop.Worker, "used as it is", false)]
    [InlineData("concession", RigShop.Trainee, "used as it is", false)]
    [InlineData("concession", RigShop.Gone, "used as it is", false)]
    [InlineData("concession", null, "used as it is", false)]
    [InlineData("concession", RigShop.Lead, " ", false)]
    [InlineData("concession", RigShop.Lead, "used as it is", true)]
    [InlineData("scrap", RigShop.Worker, "cracked", false)]
    [InlineData("scrap", null, "cracked", false)]
    [InlineData("scrap", RigShop.Lead, "", false)]
    [InlineData("scrap", RigShop.Lead, "cracked", true)]
    public void Concession_and_scrap_want_a_lead_his_pin_and_a_reason(
        string way,
        string? person,
        string reason,
        bool taken
    )
    {
        Rig rig = Out();

        Assert.Equal(taken, rig.Try(rig.WayOf("depth 1I", way, reason, person)) is Decision.Accepted);
        StepStanding kept = taken && way == "concession" ? StepStanding.Done : StepStanding.Out;
        Assert.Equal(kept, rig.Standing("depth 1I"));
        Assert.Equal(taken && way == "scrap" ? JobStanding.Scrapped : JobStanding.Open, rig.State.Standing);
    }

    [Fact]
    public void A_leads_mark_counts_for_the_result_and_the_reason_it_was_given_for_alone()
    {
        Rig rig = Out();
        rig.Enter("depth 1E", "0.061");
        RunCommand.TakeWay way = (RunCommand.TakeWay)rig.WayOf("depth 1I", "concession", "used as it is", RigShop.Lead);

        rig.Refuses(way with { At = rig.At("depth 1E") });
        rig.Refuses(way with { Reason = "another reason" });
        rig.Refuses(way with { Way = "scrap" });
        rig.Refuses(way with { Mark = way.Mark! with { Name = "somebody else" } });
        rig.Refuses(way with { Mark = way.Mark! with { Signature = "" } });
        rig.Do(way);
    }

    [Fact]
    public void A_conceded_value_says_so_and_who_and_why_and_no_longer_once_it_is_taken_anew()
    {
        Rig rig = Out();
        RunEvent.Conceded conceded = rig.Way("depth 1I", "concession", "used as it is", RigShop.Lead)
            .OfType<RunEvent.Conceded>()
            .Single();

        Assert.Equal((RigShop.Lead, "used as it is"), (conceded.Mark.Person, conceded.Reason));
        Assert.True(rig.Record("depth 1I").Conceded);
        Assert.Equal(Verdict.Out, rig.Value("depth", "1I").Judgement.Verdict);
        rig.Correct("depth 1I", "0.059");
        Assert.False(rig.Record("depth 1I").Conceded);
        Assert.Equal(StepStanding.Out, rig.Standing("depth 1I"));
    }

    [Fact]
    public void Where_the_procedure_offers_no_concession_there_is_none()
    {
        Rig rig = Out("- measure: depth\n  ways-on: [measure again, scrap]");

        Assert.Equal(["measure again", "scrap"], rig.Prompt("depth 1I").WaysOn.Select(w => w.Text));
        rig.Refuses(rig.WayOf("depth 1I", "concession", "used as it is", RigShop.Lead));
    }

    [Fact]
    public void Scrap_ends_the_job()
    {
        Rig rig = Out();
        rig.Way("depth 1I", "scrap", "cracked through", RigShop.Lead);

        Assert.Equal("cracked through", rig.State.StandingReason);
        rig.EnterRefused("depth 1E", "0.050");
        rig.Refuses(new RunCommand.Note(null, "too late"));
        rig.Refuses(new RunCommand.Hold("too late"));
        rig.Refuses(new RunCommand.TakeUp());
        Assert.NotNull(rig.State.Find(rig.At("depth 1I")));
    }

    private const string Retest = """
        - measure: depth
          retest-first: clean the seat, snap the valve, test again
          ways-on:
          - measure again
          - cut again: {back-to: depth}
          - concession
          - scrap
        """;

    [Fact]
    public void After_a_first_fail_only_a_retest_is_offered_and_both_results_are_kept()
    {
        Rig rig = Out(Retest);

        Assert.Equal(["measure again"], rig.Prompt("depth 1I").WaysOn.Select(w => w.Text));
        rig.Refuses(rig.WayOf("depth 1I", "cut again"));
        rig.Refuses(rig.WayOf("depth 1I", "concession", "used as it is", RigShop.Lead));
        rig.Way("depth 1I", "measure again");
        rig.Enter("depth 1I", "0.0601");

        Assert.Equal(4, rig.Prompt("depth 1I").WaysOn.Count);
        Assert.Equal(2, rig.Record("depth 1I").Readings.Count);
        rig.Way("depth 1I", "cut again");
        rig.Enter("depth 1I", "0.060");
        Assert.Single(rig.Prompt("depth 1I").WaysOn); // begun anew, so a first fail again
    }

    [Fact]
    public void A_corrected_first_fail_is_still_a_first_fail()
    {
        Rig rig = Out(Retest);
        rig.Correct("depth 1I", "0.0605");

        Assert.Single(rig.Prompt("depth 1I").WaysOn);
    }

    [Fact]
    public void A_fail_long_after_a_pass_is_a_first_fail()
    {
        Rig rig = new(
            Work.Procedure("depth: {of: position, measured-in: length, rests-on: [valve], why: it matters}", Retest),
            Work.Head("depth: {low: 0.046, high: 0.058, origin: maker}")
        );
        rig.Enter("depth 1I", "0.060");
        rig.Way("depth 1I", "measure again");
        rig.Enter("depth 1I", "0.050");
        rig.Do(new RunCommand.Report("valves swapped", At.Head));
        rig.Enter("depth 1I", "0.060");

        Assert.Single(rig.Prompt("depth 1I").WaysOn);
    }

    [Fact]
    public void Rework_goes_back_to_the_named_step_and_what_was_between_is_done_again()
    {
        Rig rig = new(SmallWork.Procedure, SmallWork.Head);
        rig.Until("guide bore 1E");
        rig.Enter("guide bore 1E", "0.3500 0.3500");

        IReadOnlyList<RunEvent> events = rig.Way("guide bore 1E", "size again");

        Assert.Equal(
            ["guides / size the guide at 1E", "guides / guide bore at 1E"],
            events.OfType<RunEvent.Reopened>().Single().Items.Select(rig.Plan.NameOf)
        );
        rig.EnterRefused("guide bore 1E", "0.343 0.343");
        rig.Enter("size the guide 1E", "done");
        Assert.Equal(Verdict.In, rig.Read("guide bore 1E", "0.343 0.343").Worked[0].Judgement.Verdict);
    }

    [Fact]
    public void Replacing_a_part_voids_what_rested_on_it_and_changes_the_decision()
    {
        Rig rig = new(SmallWork.Procedure, SmallWork.Head);
        rig.Until("guide bore 1I"); // its guide was to be kept
        rig.Enter("guide bore 1I", "0.3500 0.3500");
        Assert.Equal(StepView.NotHere, rig.View("new guide 1I"));

        rig.Way("guide bore 1I", "another guide");

        Assert.Equal("replace", rig.State.ChoiceOf("guide", 0));
        Assert.True(rig.Value("recession", "1I").Stale);
        Assert.False(rig.Value("recession", "1E").Stale);
        Assert.Equal(StepView.Open, rig.View("teardown / measured")); // a decision it covers has changed
        rig.Sign("teardown / measured");
        Assert.Equal(StepView.Open, rig.View("new guide 1I"));
        rig.ToRelease();
    }

    [Fact]
    public void A_cut_done_over_starts_from_a_zero_set_anew()
    {
        Rig rig = new(SmallWork.Procedure, SmallWork.Head);
        rig.Until("seat cut / recession 1I");
        rig.Do(new RunCommand.LiftToMeasure(rig.At("seat cut / recession 1I")));
        rig.Enter("seat cut / recession 1I", "0.0700 in; 0.0700 in");

        rig.Way("seat cut / recession 1I", "cut again");

        Assert.Equal(StepView.Open, rig.View("seat 1I"));
        rig.EnterRefused("seat cut / recession 1I", "0.024");
        rig.ToRelease();
    }

    [Fact]
    public void A_conceded_finding_stays_what_was_found()
    {
        Rig rig = new(SmallWork.Procedure, SmallWork.Head);
        rig.Until("crack test 1I");
        rig.Enter("crack test 1I", "cracked");
        rig.Way("crack test 1I", "concession", "outside the water side", RigShop.Lead);

        Assert.Equal("cracked", rig.State.FindingOf("crack test", 0));
        Assert.True(rig.Record("crack test 1I").Conceded);
    }

    [Fact]
    public void A_concession_over_a_result_that_has_gone_stale_doesnt_spare_taking_it_again()
    {
        Rig rig = new(SmallWork.Procedure, SmallWork.Head);
        rig.Until("crack test 1I");
        rig.Enter("crack test 1I", "cracked");
        rig.Do(new RunCommand.Report("head dropped", At.Head));
        rig.Way("crack test 1I", "concession", "outside the water side", RigShop.Lead);

        Assert.Equal(StepPhase.Recheck, rig.Phase("crack test 1I"));
    }

    [Fact]
    public void A_conceded_depth_at_touch_off_is_still_to_be_zeroed_from()
    {
        Rig rig = new(SmallWork.Procedure, SmallWork.Head);
        rig.Until("seat 1I");
        rig.Enter("seat 1I", "0.0700 in; 0.0700 in");
        rig.Way("seat 1I", "concession", "the builder has a thicker gasket", RigShop.Lead);

        Assert.Equal(StepView.Open, rig.View("seat 1I"));
        rig.Enter("seat 1I", "0");
        Assert.Equal("nothing", rig.Target("seat cut / recession 1I"));
        rig.ToRelease();
    }

    [Fact]
    public void A_number_is_wanted_where_there_is_one_never_a_tick()
    {
        Rig rig = Work.OneReading("{low: 0.046, high: 0.058, origin: maker}");
        foreach (string text in new[] { "done", "ok", "yes", "moves freely", "in", "" })
        {
            rig.EnterRefused("depth 1I", text);
        }

        Assert.Null(rig.State.Value("depth", 0));
    }

    [Fact]
    public void Forbidden_work_is_shown_as_forbidden_with_why_and_isnt_waited_for()
    {
        Rig rig = new(SmallWork.Procedure, SmallWork.Head);
        rig.Until("narrow the seat 1I");
        At lap = rig.At("lap the seat 1I");

        Assert.Equal(Asked.Forbidden, rig.Outlook.AskedAt(lap));
        foreach (
            RunCommand command in new RunCommand[]
            {
                new RunCommand.Enter(lap, "done"),
                new RunCommand.LeaveOut(lap, "no"),
            }
        )
        {
            string why = rig.Refuses(command).Why;
            Assert.Contains("forbidden", why, StringComparison.Ordinal);
            Assert.Contains("finished by the cutter", why, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Not_for_this_head_only_where_the_procedure_allows_it_and_with_a_reason()
    {
        Rig rig = new(SmallWork.Procedure, SmallWork.Head);
        rig.Until("narrow the seat 1I");
        rig.Refuses(new RunCommand.LeaveOut(rig.At("stem height 1I"), "not for this head"));
        rig.Refuses(new RunCommand.LeaveOut(rig.At("narrow the seat 1I"), " "));
        rig.Refuses(new RunCommand.LeaveOut(rig.At("narrow the seat 1E"), "not open yet"));
        rig.Do(new RunCommand.LeaveOut(rig.At("narrow the seat 1I"), "the width is right"));

        Assert.Equal(StepPhase.LeftOut, rig.Phase("narrow the seat 1I"));
        Assert.Equal("the width is right", rig.Record("narrow the seat 1I").Said);
        rig.Refuses(new RunCommand.LeaveOut(rig.At("narrow the seat 1I"), "again"));
        Assert.Equal(StepView.Open, rig.View("stem height 1I"));
    }

    [Fact]
    public void That_a_step_was_left_out_is_taken_back_with_a_reason_and_both_stay()
    {
        Rig rig = new(SmallWork.Procedure, SmallWork.Head);
        rig.Until("narrow the seat 1I");
        rig.Refuses(new RunCommand.TakeBack(rig.At("narrow the seat 1I"), "nothing was left out"));
        rig.Do(new RunCommand.LeaveOut(rig.At("narrow the seat 1I"), "the width is right"));
        rig.Refuses(new RunCommand.TakeBack(rig.At("narrow the seat 1I"), " "));

        IReadOnlyList<RunEvent> events = rig.Do(new RunCommand.TakeBack(rig.At("narrow the seat 1I"), "read wrongly"));

        Assert.Equal("read wrongly", events.OfType<RunEvent.LeavingOutTakenBack>().Single().Reason);
        Assert.Equal(StepPhase.Waiting, rig.Phase("narrow the seat 1I"));
        Assert.Equal(StepView.Open, rig.View("narrow the seat 1I"));
        Assert.NotEqual(StepView.Open, rig.View("stem height 1I"));
        rig.Refuses(new RunCommand.TakeBack(rig.At("narrow the seat 1I"), "again"));
    }

    [Fact]
    public void A_trainees_signature_needs_a_leads_beside_it_over_the_same_results()
    {
        Rig rig = Work.OneReading("{low: 0.046, high: 0.058, origin: maker}");
        foreach (string position in new[] { "1I", "1E", "2I", "2E" })
        {
            rig.Refuses(rig.SignOf(rig.At("measured"), RigShop.Lead));
            rig.Enter($"depth {position}", "0.050");
        }

        At sign = rig.At("measured");
        rig.Refuses(rig.SignOf(sign, RigShop.Trainee));
        rig.Refuses(rig.SignOf(sign, RigShop.Trainee, RigShop.Worker));
        rig.Refuses(rig.SignOf(sign, RigShop.Trainee, RigShop.Gone));
        rig.Refuses(rig.SignOf(sign, RigShop.Gone));
        RunCommand.Sign good = rig.SignOf(sign, RigShop.Trainee, RigShop.Lead);
        rig.Refuses(good with { Beside = good.Beside! with { At = good.Beside.At.AddHours(1) } });
        rig.Correct("depth 2E", "0.051");
        rig.Refuses(good); // signed over what is no longer so
        rig.Do(rig.SignOf(sign, RigShop.Trainee, RigShop.Lead));
        rig.Refuses(rig.SignOf(sign, RigShop.Lead)); // nothing to sign twice

        At release = rig.At("released");
        rig.Refuses(rig.SignOf(release, RigShop.Worker));
        rig.Do(rig.SignOf(release, RigShop.Lead));
        rig.Refuses(new RunCommand.Correct(rig.At("depth 1I"), "0.051", "too late"));
    }

    [Fact]
    public void Held_only_notes_and_taking_up_are_possible()
    {
        Rig rig = Work.OneReading("{low: 0.046, high: 0.058, origin: maker}");
        rig.Refuses(new RunCommand.TakeUp());
        rig.Refuses(new RunCommand.Hold(" "));
        rig.Do(new RunCommand.Hold("waiting for valves"));
        rig.EnterRefused("depth 1I", "0.050");
        rig.Refuses(new RunCommand.Hold("twice"));
        rig.Do(new RunCommand.Note(rig.At("depth 1I"), "they come on Monday"));
        Assert.Equal("waiting for valves", rig.State.StandingReason);
        rig.Do(new RunCommand.TakeUp());
        rig.Enter("depth 1I", "0.050");
    }

    [Fact]
    public void It_is_handed_over_in_mid_job_to_someone_who_is_here()
    {
        Rig rig = Work.OneReading("{low: 0.046, high: 0.058, origin: maker}");
        rig.Enter("depth 1I", "0.050");
        rig.Refuses(new RunCommand.HandOver("nobody"));
        rig.Refuses(new RunCommand.HandOver(RigShop.Gone));
        RunEvent.HandedOver handed = (RunEvent.HandedOver)
            Assert.Single(rig.Do(new RunCommand.HandOver(RigShop.Trainee)));

        Assert.Equal((RigShop.Worker, RigShop.Trainee), (handed.From, handed.To));
        Assert.Equal(RigShop.Trainee, rig.State.Worker);
    }

    [Theory]
    [InlineData(-2)]
    [InlineData(4)]
    [InlineData(int.MaxValue)]
    [InlineData(int.MinValue)]
    public void A_place_that_isnt_there_is_refused_in_every_command(int position)
    {
        Rig rig = Work.OneReading("{low: 0.046, high: 0.058, origin: maker}");
        rig.Refuses(new RunCommand.Report("deck hit", position));
        rig.Refuses(new RunCommand.Note(new At(0, position), "where?"));
        rig.Refuses(new RunCommand.Note(new At(position, 0), "where?"));
        rig.Refuses(new RunCommand.Enter(new At(0, position), "0.050"));
        rig.Refuses(new RunCommand.Correct(new At(position, 0), "0.050", "slip"));
        rig.Refuses(new RunCommand.ChooseLimit("depth", position, RigShop.Q("1 in"), null, null, "why not"));
    }

    [Fact]
    public void A_report_the_procedure_doesnt_know_is_refused()
    {
        Rig rig = Work.OneReading("{low: 0.046, high: 0.058, origin: maker}");

        Assert.Contains("changed cutter edge", rig.Refuses(new RunCommand.Report("the weather", 0)).WhatToDo);
        rig.Do(new RunCommand.Report("Cutter Edge", At.Head));
    }

    [Fact]
    public void Before_a_job_is_opened_nothing_is_possible_and_it_is_opened_once()
    {
        Rig rig = Work.OneReading("{low: 0.046, high: 0.058, origin: maker}");
        RunState fresh = new(rig.Plan, "x");

        Assert.IsType<Decision.Refused>(RunDecider.Decide(fresh, rig.Shop, new RunCommand.TakeUp(), rig.Moment));
        rig.Refuses(new RunCommand.OpenJob(rig.State.Job!));
    }
}
