using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static ProcRunner.Runs.Tests.DoubtWork;

namespace ProcRunner.Runs.Tests;

/// <summary>What holds for every question about a reading: a second reading settles it, the question isn't repeated, a procedure may switch it off. The thresholds are common practice, no source.</summary>
public sealed class DoubtTests
{
    [Fact]
    public void A_slip_of_the_fingers_between_does_not_lose_the_first_reading()
    {
        Rig rig = Twice();
        rig.Enter("found 1I", "0.052");
        rig.Enter("once more 1I", "0.077");
        Assert.NotEmpty(Asked(rig.Enter("once more 1I", "77")).Meanings);

        Assert.Equal(RigShop.Q("0.077 in"), rig.Read("once more 1I", "0.077").Value);
    }

    // What is only recorded, as the head came, may be far out of limits, but not by a slip of the point.
    [Theory]
    [InlineData("512", true)]
    [InlineData("5.2", true)]
    [InlineData("0.150", false)]
    [InlineData("-0.004", false)]
    [InlineData("512 in", false)]
    public void A_slip_of_the_point_is_asked_about_where_a_reading_is_only_recorded_too(string text, bool asked) =>
        Assert.Equal(asked, Twice().Enter("found 1I", text) is [RunEvent.EntryQuestioned { IsOfReading: false }]);

    [Fact]
    public void What_is_settled_is_settled_for_the_steps_that_follow()
    {
        Rig rig = new(
            Work.Procedure(
                Depth,
                string.Join(
                    '\n',
                    new[] { "a", "b", "c" }.Select(n => $"- measure: depth\n  named: {n}\n  window: none")
                )
            ),
            Work.Head(Limit),
            Turning("0.025 in")
        );
        rig.Enter("a 1I", "0.052");
        Assert.True(IsAsked(rig.Enter("b 1I", "0.077")));
        rig.Read("b 1I", "0.077");

        Assert.Equal(RigShop.Q("0.077 in"), rig.Read("c 1I", "0.077").Value);
    }

    [Fact]
    public void A_correction_is_asked_about_in_the_same_way_and_takes_the_place_of_the_entry_only_then()
    {
        Rig rig = new(
            Work.Procedure(Depth, "- measure: depth\n  ways-on: [measure again, scrap]"),
            Work.Head(Limit),
            Turning("0.025 in")
        );
        rig.Enter("depth 1I", "0.053");

        Assert.True(IsAsked(rig.Correct("depth 1I", "0.077")));
        Assert.Equal(RigShop.Q("0.053 in"), rig.Value("depth", "1I").Value);
        rig.Correct("depth 1I", "0.077");

        Assert.Equal(RigShop.Q("0.077 in"), rig.Value("depth", "1I").Value);
        Same(rig);
    }

    [Fact]
    public void Work_that_moved_what_it_rests_on_explains_any_difference()
    {
        Rig rig = AsFound(
            Depth.Replace("why:", "rests-on: [deck], wears: larger, why:", StringComparison.Ordinal),
            Limit,
            Turning("0.025 in")
        );
        Found(rig, "0.052", "0.0525", "0.052", "0.052");
        rig.Do(new RunCommand.Report("deck hit", At.Head));

        Assert.Equal(RigShop.Q("0.027 in"), rig.Read("once more 1I", "0.027").Value);
    }

    [Theory]
    [InlineData("doubt: no", false)]
    [InlineData("doubt: yes", true)]
    [InlineData("doubt: {one-turn: no}", false)]
    [InlineData("doubt: {swapped: no, against-wear: no, odd-one-out: no}", true)]
    [InlineData("doubt: {one-turn: 0.001 in}", false)] // 0.0770 is 0.0012 off one turn
    [InlineData("doubt: {one-turn: 0.03 mm}", false)]
    [InlineData("doubt: {one-turn: 0.0012 in}", true)]
    public void A_procedure_switches_a_question_off_or_sets_its_distance(string says, bool asked)
    {
        Rig rig = Twice(Depth.Replace("why:", says + ", why:", StringComparison.Ordinal));
        rig.Enter("found 1I", "0.0508");

        Assert.Equal(asked, IsAsked(rig.Enter("once more 1I", "0.0770")));
    }

    /// <summary>
    /// Whatever the size is and whatever stood there before, who measures the same thing twice to within the gauge's
    /// uncertainty is asked once at most.
    /// </summary>
    [Property(MaxTest = 150)]
    public Property An_honest_operator_is_asked_once_at_most()
    {
        Gen<int> size = Gen.Choose(400, 1400);
        Gen<int> off = Gen.Choose(-20, 20);
        Gen<(int Found, int Now, int First, int Second)> gen =
            from found in size
            from now in size
            from first in off
            from second in off
            select (found, now, first, second);
        return Prop.ForAll(
            gen.ToArbitrary(),
            p =>
            {
                Rig rig = AsFound(
                    Depth.Replace("why:", "wears: smaller, why:", StringComparison.Ordinal),
                    Limit,
                    RigShop.State.With(RigShop.Gauge("depth", "0.002 in") with { Turn = RigShop.Q("0.010 in") })
                );
                static string In(int tenths) => string.Create(CultureInfo.InvariantCulture, $"{tenths / 10_000m} in");
                foreach (string place in new[] { "1I", "1E", "2I", "2E" })
                {
                    string text = In(place == "1I" ? p.Found : 520);
                    bool again =
                        IsAsked(rig.Enter($"found {place}", text)) && IsAsked(rig.Enter($"found {place}", text));
                    Assert.False(again);
                }

                rig.Sign("teardown signed");
                return !IsAsked(rig.Enter("once more 1I", In(p.Now + p.First)))
                    || !IsAsked(rig.Enter("once more 1I", In(p.Now + p.Second)));
            }
        );
    }

    [Fact]
    public void A_question_is_no_reading_and_holds_the_gate()
    {
        Rig rig = Twice();
        foreach (string place in new[] { "1I", "1E", "2I", "2E" })
        {
            rig.Enter($"found {place}", "0.052");
            rig.Enter($"once more {place}", place == "2E" ? "0.077" : "0.052");
        }

        Assert.Single(rig.Record("found 2E").Readings);
        Assert.Empty(rig.Record("once more 2E").Readings);
        rig.Refuses(rig.SignOf(rig.At("measured"), RigShop.Lead));
        rig.Enter("once more 2E", "0.077");
        rig.Sign("measured");
    }
}
