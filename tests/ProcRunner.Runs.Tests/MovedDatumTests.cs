namespace ProcRunner.Runs.Tests;

/// <summary>Whoever moves a datum voids what was measured from it; nothing is deleted.</summary>
public sealed class MovedDatumTests
{
    // Every reading rests on one datum; a report moves each datum in turn, everywhere.
    private static readonly string[] Data = ["deck", "set-up", "guide", "seat", "valve"];

    private static Rig Make(string moves)
    {
        string readings = string.Join(
            '\n',
            Data.Select(d => $"on {d}: {{of: position, measured-in: length, rests-on: [{d}], why: it matters}}")
        );
        string steps = string.Join('\n', Data.Select(d => $"- measure: on {d}\n  window: none"));
        Rig rig = new(Work.Procedure(readings, $"{steps}\n- do: the work\n  moves: [{moves}]"), Work.Head(""));
        foreach (At at in rig.Outlook.All.Where(at => rig.Plan.Steps[at.Step].Taking is not null).ToArray())
        {
            rig.Do(new RunCommand.Enter(at, "0.050"));
        }

        return rig;
    }

    public static TheoryData<string, string, string[]> Reaches =>
        new()
        {
            { "guide", "2I", ["2I"] },
            { "seat", "1I", ["1I"] },
            { "guide at neighbours", "1E", ["1I", "2I"] },
            { "guide at neighbours", "1I", ["1E"] },
            { "guide at neighbours", "2E", ["2I"] },
            { "valve everywhere", "1E", ["1I", "1E", "2I", "2E"] },
            { "deck", "2E", ["1I", "1E", "2I", "2E"] },
            { "set-up", "1I", ["1I", "1E", "2I", "2E"] },
        };

    [Theory]
    [MemberData(nameof(Reaches))]
    public void A_move_voids_what_rests_on_it_as_far_as_it_reaches_and_nothing_else(
        string moves,
        string where,
        string[] reached
    )
    {
        Rig rig = Make(moves);
        string moved = moves.Split(' ')[0];

        rig.Enter($"the work {where}", "done");

        foreach (string datum in Data)
        {
            foreach (string position in new[] { "1I", "1E", "2I", "2E" })
            {
                bool stale = datum == moved && reached.Contains(position);
                ValueRecord value = rig.Value($"on {datum}", position);
                Assert.Equal(stale, value.Stale);
                Assert.Equal("0.050 in", value.Value.ToString()); // nothing is deleted
                Assert.Equal(stale ? "the work" : "", value.Cause);
                Assert.Equal(stale ? StepView.Open : StepView.Done, rig.View($"on {datum} {position}"));
            }
        }

        rig.Refuses(rig.SignOf(rig.At("measured"), RigShop.Lead));
    }

    [Fact]
    public void What_rests_on_what_rests_on_it_goes_too_and_what_is_worked_out_from_it()
    {
        Rig rig = new(
            Work.Procedure(
                """
                a: {of: position, measured-in: length, rests-on: [guide], why: it matters}
                b: {of: position, measured-in: length, rests-on: [a], why: it matters}
                c: {of: position, measured-in: length, why: it matters}
                d: {of: position, measured-in: length, why: it matters}
                """,
                """
                - measure: a
                  window: none
                - measure: b
                  window: none
                - measure: c
                  window: {high: "[a] + '1 in'", origin: shop}
                  works-out:
                    c less b: {is: "[c] - [b]", window: none}
                    twice that: {is: "2 * [c less b]", window: none}
                - measure: d
                  window: none
                - do: hone
                  moves: [guide]
                """
            ),
            Work.Head("")
        );
        foreach (string name in new[] { "a", "b", "c", "d" })
        {
            rig.Enter($"{name} 1I", "0.5");
        }

        rig.Enter("hone 1I", "done");

        Assert.Equal(
            [true, true, true, true, true, false],
            new[] { "a", "b", "c", "c less b", "twice that", "d" }.Select(n => rig.Value(n, "1I").Stale)
        );
    }

    /// <summary>A later reading of the same thing by another step makes no old worked-out value hold.</summary>
    [Fact]
    public void A_value_worked_out_from_an_older_reading_is_void_when_another_step_takes_a_new_one()
    {
        Rig rig = new(
            Work.Procedure(
                "bore: {of: position, measured-in: length, why: it matters}",
                """
                - measure: bore
                  window: none
                  works-out: {over: {is: "[bore] - '0.340 in'", window: none}}
                - measure: bore
                  named: bore again
                  window: none
                """
            ),
            Work.Head("")
        );
        rig.Enter("bore 1I", "0.343");
        rig.Enter("bore again 1I", "0.343");
        Assert.False(rig.Value("over", "1I").Stale);
        rig.Correct("bore again 1I", "0.344");

        Assert.True(rig.Value("over", "1I").Stale);
        Assert.Equal(StepView.Open, rig.View("bore 1I"));
    }

    [Fact]
    public void A_later_gate_over_the_same_reading_judges_the_new_one()
    {
        Rig rig = new(
            Work.Procedure(
                "bore: {of: position, measured-in: length, rests-on: [guide], why: it matters}",
                """
                - measure: bore
                  window: none
                - measure: bore
                  named: bore after
                """
            ),
            Work.Head("bore: {high: 0.350, origin: maker}")
        );
        rig.Enter("bore 1I", "0.343");
        rig.Enter("bore after 1I", "0.343");
        rig.Correct("bore 1I", "0.344"); // an older entry: the later one still counts
        Assert.Equal(StepView.Done, rig.View("bore after 1I"));
        Assert.Equal("0.343 in", rig.Value("bore", "1I").Value.ToString());
    }

    [Fact]
    public void A_comparison_with_other_positions_is_void_when_one_of_them_changes()
    {
        Rig rig = new(
            Work.Procedure(
                "load: {of: position, measured-in: lbf, why: it matters}\nspread: {of: position, measured-in: lbf, why: it matters}",
                """
                - measure: load
                  window: none
                - measure: spread
                  window: {high: "[all.load.largest]", origin: shop}
                """
            ),
            Work.Head("")
        );
        rig.Enter("load 1I", "80 lbf");
        rig.Enter("spread 1I", "1 lbf");
        rig.Enter("load 1E", "82 lbf");
        Assert.False(rig.Value("spread", "1I").Stale); // a first value elsewhere is no move

        rig.Correct("load 1E", "83 lbf");

        Assert.True(rig.Value("spread", "1I").Stale);
    }

    [Fact]
    public void What_was_judged_without_a_value_is_void_when_it_becomes_known()
    {
        Rig rig = new(
            Work.Procedure(
                "depth: {of: position, measured-in: length, why: it matters}\nskim: {of: head, measured-in: length, why: it shifts}",
                """
                - measure: depth
                  window: {high: "'0.058 in' - else([skim], '0 in')", origin: maker}
                - measure: skim
                  window: none
                - measure: depth
                  named: depth after
                  window: {high: "'0.058 in' - [skim]", origin: maker}
                """
            ),
            Work.Head("")
        );
        foreach (string position in new[] { "1I", "1E", "2I", "2E" })
        {
            rig.Enter($"depth {position}", "0.057");
        }

        rig.Enter("skim", "0.004");

        Assert.True(rig.Value("depth", "2E").Stale);
        Assert.Equal(StepView.Open, rig.View("depth after 2E"));
    }

    [Fact]
    public void A_decision_or_finding_that_changes_voids_what_reads_it()
    {
        Rig rig = new(
            Work.Procedure(
                "depth: {of: position, measured-in: length, why: it matters}",
                """
                - decide: seat
                  choices: [keep, insert]
                - measure: depth
                  window: {high: "if([decided.seat] = 'keep', '0.058 in', '0.060 in')", origin: maker}
                """
            ),
            Work.Head("")
        );
        rig.Enter("seat 1I", "insert");
        rig.Enter("seat 1E", "insert");
        rig.Enter("depth 1I", "0.059");
        rig.Enter("depth 1E", "0.059");
        rig.Correct("seat 1I", "insert");
        Assert.False(rig.Value("depth", "1I").Stale); // it says what it said

        rig.Correct("seat 1I", "keep");

        Assert.True(rig.Value("depth", "1I").Stale);
        Assert.False(rig.Value("depth", "1E").Stale);
        Assert.Equal(Verdict.Out, rig.Read("depth 1I", "0.059").Judgement.Verdict);
    }

    [Fact]
    public void A_value_that_only_the_teardown_takes_is_asked_there_again_when_something_wants_it()
    {
        Rig rig = new(SmallWork.Procedure, SmallWork.Head);
        rig.Until("guides / guide bore 1I");
        rig.Do(new RunCommand.Report("valves swapped", At.Head));

        Assert.Contains("stem", rig.EnterRefused("guide bore 1I", "0.343 0.343").Why, StringComparison.Ordinal);
        Assert.Equal(StepView.Open, rig.View("stem 1I"));
        Assert.Equal(StepView.Done, rig.View("teardown / recession 1I")); // nobody wants that one
        rig.Enter("stem 1I", "0.3401");
        Assert.Equal("0.3405 in", rig.Value("stem", "1I").AsFound.ToString()); // how the head came stays what it was
        rig.ToRelease();
    }

    [Fact]
    public void A_stage_isnt_signed_again_while_a_value_of_it_waits_for_a_later_step()
    {
        Rig rig = new(SmallWork.Procedure, SmallWork.Head);
        rig.Until("surface / skim the deck");
        rig.Enter("skim the deck", "done");
        rig.Correct("stem height 1I", "1.561");

        Assert.Equal(StepView.Later, rig.View("seat cut / measured"));
        rig.Refuses(rig.SignOf(rig.At("seat cut / measured"), RigShop.Lead));
        rig.Enter("skim taken", "0.004");
        rig.Enter("thickness after", "3.921");
        foreach (string position in new[] { "1I", "1E" })
        {
            rig.Enter($"recession after {position}", "0.052 in; 0.052 in");
        }

        Assert.Equal(StepView.Open, rig.View("seat cut / measured"));
        rig.Refuses(rig.SignOf(rig.At("checked"), RigShop.Lead));
        rig.ToRelease();
    }

    [Fact]
    public void A_stage_signed_before_stays_signed_and_its_stale_values_are_taken_by_a_later_step()
    {
        Rig rig = new(SmallWork.Procedure, SmallWork.Head);
        rig.Until("surface / skim the deck");
        long signed = rig.Record("seat cut / measured").Sequence;
        rig.Enter("skim the deck", "done");

        Assert.Equal(StepView.Later, rig.View("seat cut / recession 1I"));
        Assert.Equal(StepPhase.Recheck, rig.Phase("seat cut / recession 1I"));
        Assert.Equal(signed, rig.Record("seat cut / measured").Sequence);
        Assert.Contains("skim", rig.Prompt("seat cut / recession 1I").Recheck, StringComparison.Ordinal);
        rig.Refuses(rig.SignOf(rig.At("surface / released"), RigShop.Lead));
        rig.ToRelease();
        Assert.Equal(rig.At("recession after 1I").Step, rig.Value("recession", "1I").ByStep);
    }
}
