using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static ProcRunner.Runs.Tests.DoubtWork;

namespace ProcRunner.Runs.Tests;

/// <summary>Readings about one turn of the gauge in use off what is to be expected. The thresholds are common practice, no source.</summary>
public sealed class TurnDoubtTests
{
    [Fact]
    public void One_turn_more_than_before_is_asked_about_with_its_numbers_and_the_same_reading_twice_is_taken()
    {
        Rig rig = Twice();
        rig.Enter("found 1I", "0.052");

        RunEvent.EntryQuestioned question = Asked(rig.Enter("once more 1I", "0.077"));

        Assert.Equal(
            "Read 0.077 in; 0.0250 in (one turn of gauge depth-1) more than the last reading, 0.0520 in. "
                + "Measure again: the same reading twice is taken.",
            question.Why
        );
        Assert.Empty(question.Meanings);
        Assert.Equal(RigShop.Q("0.052 in"), rig.Value("depth", "1I").Value);
        Assert.Equal(StepView.Open, rig.View("once more 1I"));
        Assert.Equal(question.Why, rig.Prompt("once more 1I").Question!.Why);
        Assert.Equal(RigShop.Q("0.077 in"), rig.Read("once more 1I", "0.077").Value);
        Assert.Null(rig.Prompt("once more 1I").Question);
        Same(rig);
    }

    // Turns of 0.025 in, 0.5 mm and 0.100 in are those of common micrometers and indicators (common practice, no source).
    [Theory]
    [InlineData("0.025 in", "1.000 in", "1.025 in", true)]
    [InlineData("0.025 in", "1.000 in", "0.975 in", true)]
    [InlineData("0.025 in", "1.000 in", "1.0187 in", false)] // under three quarters of a turn
    [InlineData("0.025 in", "1.000 in", "1.01875 in", true)] // three quarters, on the border
    [InlineData("0.025 in", "1.000 in", "1.03125 in", true)]
    [InlineData("0.025 in", "1.000 in", "1.0313 in", false)] // over five quarters
    [InlineData("0.025 in", "1.000 in", "1.0125 in", false)] // half a turn
    [InlineData("0.025 in", "1.000 in", "1.000 in", false)]
    [InlineData("0.5 mm", "25.40 mm", "25.90 mm", true)]
    [InlineData("0.5 mm", "25.40 mm", "24.90 mm", true)]
    [InlineData("0.5 mm", "1.000 in", "25.90 mm", true)] // found in the other unit
    [InlineData("0.5 mm", "25.40 mm", "26.425 mm", false)]
    [InlineData("0.100 in", "1.000 in", "1.098 in", true)]
    [InlineData("0.100 in", "1.000 in", "1.025 in", false)] // another gauge's turn isn't this one's
    [InlineData(null, "1.000 in", "1.025 in", false)] // a gauge without a dial
    public void Each_gauge_knows_its_own_turn(string? turn, string found, string read, bool asked)
    {
        Rig rig = Twice(limit: "depth: {low: 0.9, high: 1.2, origin: maker}", turn: turn);
        rig.Enter("found 2E", found);

        Assert.Equal(asked, IsAsked(rig.Enter("once more 2E", read)));
    }

    /// <summary>Any turn, any reading, any distance: asked exactly when the distance is within a quarter turn of a turn.</summary>
    [Property(MaxTest = 150)]
    public Property A_reading_is_asked_about_exactly_when_it_is_about_a_turn_off(bool metric)
    {
        Gen<(int Turn, int Off)> gen =
            from turn in Gen.Choose(40, 1000)
            from off in Gen.Choose(-1600, 1600)
            select (turn, off);
        return Prop.ForAll(
            gen.ToArbitrary(),
            p =>
            {
                string unit = metric ? "mm" : "in";
                string Text(int tenths) => string.Create(CultureInfo.InvariantCulture, $"{tenths / 10_000m} {unit}");
                Rig rig = Twice(limit: "depth: {low: 0.001, high: 9, origin: maker}", turn: Text(p.Turn));
                rig.Enter("found 1I", Text(10_000));
                bool about = Math.Abs(Math.Abs(p.Off) - p.Turn) * 4 <= p.Turn;
                return IsAsked(rig.Enter("once more 1I", Text(10_000 + p.Off))) == about;
            }
        );
    }

    [Theory]
    [InlineData("0.0512 0.0509 0.0760 0.0511", "rear")]
    [InlineData("0.0512 0.0259 0.0510 0.0511", "right")]
    [InlineData("0.0512 0.0509 0.0510 0.0511", null)]
    [InlineData("0.0512 0.0509 0.0640 0.0511", null)] // half a turn: the spread's business, not the turn's
    [InlineData("0.0512 0.0762 0.0760 0.0511", null)] // two and two: no place stands alone
    public void A_place_one_turn_off_its_neighbours_is_named(string text, string? place)
    {
        Rig rig = Twice(
            "depth: {of: position, measured-in: length, places: [front, right, rear, left], gauge: depth, why: it matters}"
        );

        IReadOnlyList<RunEvent> events = rig.Enter("found 1E", text);

        Assert.Equal(place is not null, IsAsked(events));
        Assert.True(place is null || Asked(events).Why.Contains($" at {place};", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("0.077", true)] // 0.077 - 0.025 = 0.052, the aim
    [InlineData("0.029", true)] // 0.029 + 0.025 = 0.054
    [InlineData("0.069", false)] // 0.044 is no good either: it is simply too deep
    [InlineData("0.060", false)]
    [InlineData("0.055", false)]
    public void Out_of_limits_by_what_a_turn_would_mend_is_asked_about_before_it_is_refused(string text, bool asked)
    {
        Rig rig = new(
            Work.Procedure(Depth, "- measure: depth\n  ways-on: [measure again, scrap]"),
            Work.Head(Limit),
            Turning("0.025 in")
        );

        IReadOnlyList<RunEvent> first = rig.Enter("depth 1I", text);

        Assert.Equal(asked, IsAsked(first));
        if (asked)
        {
            Assert.Contains("one turn of gauge depth-1 (0.025 in)", Asked(first).Why, StringComparison.Ordinal);
            Assert.Equal(Verdict.Out, rig.Read("depth 1I", text).Judgement.Verdict);

            // Measured once more, the same is believed at once.
            rig.Way("depth 1I", "measure again");
            Assert.Equal(Verdict.Out, rig.Read("depth 1I", text).Judgement.Verdict);
        }

        Same(rig);
    }

    [Fact]
    public void A_second_reading_settles_it_whether_it_agrees_or_is_the_right_one_but_not_a_third_value()
    {
        Rig right = Twice();
        right.Enter("found 1I", "0.052");
        right.Enter("once more 1I", "0.077");
        Assert.Equal(RigShop.Q("0.0523 in"), right.Read("once more 1I", "0.0523").Value);

        Rig near = Twice();
        near.Enter("found 1I", "0.052");
        near.Enter("once more 1I", "0.077");
        Assert.Equal(RigShop.Q("0.0772 in"), near.Read("once more 1I", "0.0772").Value);

        // A turn the other way is another reading: nothing has been read twice yet.
        Rig other = Twice();
        other.Enter("found 1I", "0.052");
        other.Enter("once more 1I", "0.077");
        Assert.True(IsAsked(other.Enter("once more 1I", "0.027")));
        Assert.Equal(RigShop.Q("0.0272 in"), other.Read("once more 1I", "0.0272").Value);
    }

    [Theory]
    [InlineData("0.0520 in", false)] // what the readout gives
    [InlineData("0.0470 in", false)] // off it, but by no turn: predicted and measured are another rule's business
    [InlineData("0.0770 in", true)]
    [InlineData("0.0270 in", true)]
    public void After_a_cut_the_readout_says_what_is_to_be_expected(string text, bool asked)
    {
        Rig rig = CutWork.Make(allowance: "0.0001 in");
        rig.Shop = Turning("0.025 in");
        rig.Zero("1I", "0.023");
        rig.Pass("1I");

        Assert.Equal(asked, IsAsked(rig.Enter("cut 1I", text)));
        if (asked)
        {
            Assert.Contains(
                "than the readout gives, 0.051",
                rig.Prompt("cut 1I").Question!.Why,
                StringComparison.Ordinal
            );
            Assert.False(IsAsked(rig.Enter("cut 1I", text)));
        }
    }

    // A seat that is one turn of the gauge short of its aim when touched off has metal to go: nothing odd about it.
    [Fact]
    public void A_touch_off_one_turn_short_of_the_aim_is_taken()
    {
        Rig rig = CutWork.Make();
        rig.Shop = Turning("0.025 in");

        Assert.Equal(RigShop.Q("0.027 in"), rig.Read("seat 1I", "0.027").Value);
    }
}
