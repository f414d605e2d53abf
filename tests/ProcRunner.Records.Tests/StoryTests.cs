using ProcRunner.Records.Story;

namespace ProcRunner.Records.Tests;

public class StoryTests
{
    [Fact]
    public void The_jobs_are_worked_to_their_end()
    {
        Assert.Equal(0, Worked.Demo.Status);
        Assert.Equal("released", Worked.Demo.Record.StandingWord);
        Assert.Equal("released", Worked.Conceded.Record.StandingWord);
        Assert.True(
            Worked.WithHostileText.Record.StandingWord == "released",
            Worked.WithHostileText.Output[^Math.Min(900, Worked.WithHostileText.Output.Length)..]
        );
        Assert.Equal("open", Worked.Practice.Record.StandingWord);
    }

    [Fact]
    public void A_released_job_has_nothing_to_be_taken_again()
    {
        FinalValue[] values = [.. Worked.Demo.Record.Values];

        Assert.DoesNotContain(values, v => v.Standing == ValueStanding.Recheck);
        Assert.Equal(ValueStanding.AsFound, Worked.Demo.Record.Find("cut allowed", "head")!.Standing);
        Assert.Equal(ValueStanding.AsFound, Worked.Demo.Record.Find("clearance found", "3E")!.Standing);
        Assert.Equal(ValueStanding.Recorded, Worked.Demo.Record.Find("clearance found", "1I")!.Standing);
    }

    // The demo's story as procedures/demo/README.md tells it.
    [Fact]
    public void The_demos_three_results_out_of_spec_are_told_to_their_end()
    {
        Case[] cases = [.. Worked.Demo.Record.Cases];

        Assert.Equal(
            ["2E: guide outside (guide replacement)", "1E: seat vacuum (seat cut)", "3E: recession (seat cut)"],
            cases.Select(c => c.About)
        );
        Assert.All(cases, c => Assert.Equal(CaseEnd.Settled, c.End));
        Assert.Contains("0.0697 in is over the high limit 0.0690 in", cases[2].Fault, StringComparison.Ordinal);
        Assert.StartsWith(
            "Cut until the readout showed 0.0095 in; the target was 0.0025 in.",
            cases[2].Lines[0].Text,
            StringComparison.Ordinal
        );
        Assert.Contains("new insert, because: cut too deep", cases[2].Lines[1].Text, StringComparison.Ordinal);
        Assert.Contains("recession 0.0630 in", cases[2].Outcome, StringComparison.Ordinal);
    }

    [Fact]
    public void A_concession_names_who_gave_it_and_why_and_one_that_was_overtaken_says_so()
    {
        Case[] conceded = [.. Worked.Conceded.Record.Cases.Where(c => c.End == CaseEnd.Conceded)];

        Assert.Equal(2, conceded.Length);
        Assert.Contains(
            "T. Moss (demo), because: the pump is needed this week",
            conceded[0].Outcome,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "measured again since, at surface / recession after the deck: 0.0647 in",
            conceded[0].Outcome,
            StringComparison.Ordinal
        );
        Assert.False(conceded[0].IsCurrent);
        Assert.True(conceded[1].IsCurrent);
        Assert.Contains(
            "Used out of spec: 3E: recession after the deck (surface)",
            Worked.Conceded.Record.Advice[0].Text,
            StringComparison.Ordinal
        );
        Assert.Equal(ValueStanding.Conceded, Worked.Conceded.Record.Find("recession", "3E")!.Standing);
    }

    // The deck took 0.0050 in off, so the 0.0697 in of before stands as 0.0647 in after it.
    [Fact]
    public void What_stood_before_a_value_was_taken_again_stays_with_what_moved()
    {
        Earlier overtaken = Worked.Conceded.Record.Earlier.Single(e =>
            e is { About: "recession", Position: "3E", Cause: "skim taken was cut" }
        );

        Assert.StartsWith("0.0697 in (front 0.0697,", overtaken.Was, StringComparison.Ordinal);
        Assert.StartsWith("0.0647 in", overtaken.Then, StringComparison.Ordinal);
        Assert.True(overtaken.WasBy.Entry < overtaken.ThenBy.Entry);
        Assert.Contains(
            Worked.Demo.Record.Earlier,
            e => e is { About: "decided: seat", Position: "3E", Then: "new insert" }
        );
    }

    // A retest that passed isn't a repair.
    [Fact]
    public void What_was_only_measured_again_is_not_called_put_right()
    {
        string page = Worked.Demo.Text(".html");

        Assert.True(Worked.Demo.Record.Cases.Single(c => c.Position == "1E").OnlyMeasuredAgain);
        Assert.False(Worked.Demo.Record.Cases.Single(c => c.Position == "3E").OnlyMeasuredAgain);
        Assert.Contains("no work was done for it", page, StringComparison.Ordinal);
    }

    // By hand from the demo's entries: flatness 0.0038 in against 0.0030 in, spring 4I 41 lbf against 46.
    [Fact]
    public void What_came_outside_its_limits_is_told()
    {
        string[] came = [.. Worked.Demo.Record.Values.Where(v => v.CameOutside).Select(v => $"{v.Position} {v.Name}")];

        Assert.Contains("head flatness", came);
        Assert.Contains("4I spring load closed", came);
        Assert.DoesNotContain("1I spring load closed", came);
    }

    [Fact]
    public void A_correction_shows_both()
    {
        Correction correction = Assert.Single(Worked.Conceded.Record.Corrections);

        Assert.Equal("seat cut / margin at 4I", correction.Step);
        Assert.Equal("margin 0.065 in", correction.Was);
        Assert.Equal("margin 0.055 in", correction.Now);
        Assert.Equal("typed 6 for 5", correction.Reason);
        Assert.Equal(correction.By.Entry - 1, correction.WasBy!.Entry);
    }

    [Fact]
    public void What_moved_and_what_it_made_void_is_told()
    {
        Renewal skim = Worked.Conceded.Record.Renewals.Single(r => r.Cause == "skim taken was cut");
        Renewal edge = Worked.Conceded.Record.Renewals.Single(r => r.Cause == "cutter edge changed");

        Assert.Contains("recession (every position)", skim.Items);
        Assert.Contains("flatness", skim.Items);
        Assert.Equal(["cut allowed"], skim.NotAgain);
        Assert.All(Worked.Conceded.Record.Renewals, r => Assert.Empty(r.StillOpen));
        Assert.Contains("recession (4I)", edge.Items);
    }

    [Fact]
    public void Pilots_cutters_and_their_changes_are_told()
    {
        Assert.Contains(
            Worked.Conceded.Record.Tools,
            t => t.Text.StartsWith("pilot 0.3425 in, serial P-17", StringComparison.Ordinal)
        );
        Assert.Contains(Worked.Conceded.Record.Tools, t => t is { Text: "cutter edge", Position: "4I" });
    }

    [Fact]
    public void Limits_that_are_rules_of_thumb_are_named_as_such()
    {
        string page = Worked.Demo.Text(".html");

        Assert.Contains("Limits that are rules of thumb", page, StringComparison.Ordinal);
        Assert.Matches("retainer-to-seal: these limits are common practice", page);
        Assert.Contains("(RULE OF THUMB)", page, StringComparison.Ordinal);
    }
}
