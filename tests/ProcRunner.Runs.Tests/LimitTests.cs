using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace ProcRunner.Runs.Tests;

/// <summary>Readings against limits: inclusive, exact across units, deepest against high, shallowest against low.</summary>
public sealed class LimitTests
{
    // Common practice, no source: exactly on the limit passes. 1 in = 25.4 mm exactly (NIST SP 811 (2008) App. B.8).
    [Theory]
    [InlineData("0.058", Verdict.In)]
    [InlineData("1.4732 mm", Verdict.In)]
    [InlineData("58 thou", Verdict.In)]
    [InlineData("0.0581", Verdict.Out)]
    [InlineData("1.47321 mm", Verdict.Out)]
    [InlineData("0.046", Verdict.In)]
    [InlineData("0.0459", Verdict.Out)]
    [InlineData("1.1684 mm", Verdict.In)]
    [InlineData("1.16839 mm", Verdict.Out)]
    public void On_the_limit_passes_and_the_next_smallest_step_beyond_does_not(string text, Verdict verdict)
    {
        Rig rig = Work.OneReading("{low: 0.046, aim: 0.052, high: 0.058, origin: maker}");

        Assert.Equal(verdict, rig.Read("depth 1I", text).Judgement.Verdict);
    }

    [Fact]
    public void A_limit_in_millimetres_refuses_the_inch_value_that_only_rounds_to_it()
    {
        Rig rig = Work.OneReading("{high: 0.5 mm, origin: maker}");

        TakenReading reading = rig.Read("depth 1I", "0.020 in");

        // 0.020 in = 0.508 mm (NIST SP 811 (2008) App. B.8).
        Assert.Equal(Verdict.Out, reading.Judgement.Verdict);
    }

    /// <summary>Any limit, any number of steps off it, in either unit: out exactly when beyond.</summary>
    [Property(MaxTest = 200)]
    public Property A_value_is_out_exactly_when_it_is_beyond(bool inches, bool typedInches)
    {
        Gen<(int High, int Off)> gen =
            from high in Gen.Choose(1, 3000)
            from off in Gen.Choose(-3, 3)
            select (high, off);
        return Prop.ForAll(
            gen.ToArbitrary(),
            p =>
            {
                // The limit and what is typed, both as whole ten-thousandths of an inch, or their exact millimetres.
                decimal limit = p.High / 10_000m;
                decimal typed = Math.Max(0, p.High + p.Off) / 10_000m;
                Rig rig = Work.OneReading($"{{high: {InUnit(limit, inches)}, origin: maker}}");
                Verdict verdict = rig.Read("depth 1I", InUnit(typed, typedInches)).Judgement.Verdict;
                return verdict == (p.Off > 0 ? Verdict.Out : Verdict.In);
            }
        );
    }

    [Theory]
    [InlineData("0.0579 0.0470", Verdict.In)] // within both ends, spread too
    [InlineData("0.0581 0.0579", Verdict.Out)] // the deepest is over high
    [InlineData("0.0470 0.0459", Verdict.Out)] // the shallowest is under low
    [InlineData("0.0579 0.0460", Verdict.Out)] // the spread is over its own limit, 0.0115
    [InlineData("0.0575 0.0460", Verdict.In)] // exactly on it
    public void Deepest_against_high_shallowest_against_low_spread_against_its_own(string text, Verdict verdict)
    {
        Rig rig = new(
            Work.Procedure(
                "depth: {of: position, measured-in: length, places: [front, rear], takes: deepest, why: it matters}",
                "- measure: depth\n  spread: \"'0.0115 in'\""
            ),
            Work.Head("depth: {low: 0.046, aim: 0.052, high: 0.058, origin: maker}")
        );

        TakenReading reading = rig.Read("depth 2E", text);

        Assert.Equal(verdict, reading.Judgement.Verdict);
        Assert.Equal(verdict == Verdict.Out, reading.Faults.Any());
    }

    // The window is open upward; the head spec's own limit of that name still says what size is meant.
    [Theory]
    [InlineData("39308", true)]
    [InlineData("3.9308", false)]
    [InlineData("39308 in", false)] // a unit typed is believed, and judged
    public void A_lost_point_is_questioned_in_a_window_with_one_end(string text, bool questioned)
    {
        Rig rig = new(
            Work.Procedure(
                "depth: {of: position, measured-in: length, why: it matters}",
                "- measure: depth\n  window: {low: '[spec.depth.low]', origin: maker}"
            ),
            Work.Head("depth: {low: 3.915, aim: 3.940, high: 3.945, origin: maker}")
        );

        Assert.Equal(questioned, rig.Enter("depth 1I", text).Any(e => e is RunEvent.EntryQuestioned));
    }

    // No limit above, neither in the window nor in the head spec: a land under a relief, an edge of a valve. More is better there,
    // so it is asked about only where a lost point is likelier: ten times too much, 0.62 for 0.062.
    [Theory]
    [InlineData("0.62", true)]
    [InlineData("0.062", false)]
    [InlineData("0.31", false)] // five times the low limit
    [InlineData("0.62 in", false)]
    public void A_lost_point_is_questioned_where_nothing_is_said_of_the_upper_end(string text, bool questioned)
    {
        Rig rig = new(
            Work.Procedure("depth: {of: position, measured-in: length, why: it matters}", "- measure: depth"),
            Work.Head("depth: {low: 0.060, origin: shop}")
        );

        Assert.Equal(questioned, rig.Enter("depth 1I", text).Any(e => e is RunEvent.EntryQuestioned));
    }

    [Theory]
    [InlineData("maker", "maker")]
    [InlineData("standard", "standard")]
    [InlineData("shop", "shop")]
    [InlineData("rule of thumb", "rule of thumb")]
    public void The_origin_stands_with_the_limit_in_prompt_verdict_and_refusal(string origin, string words)
    {
        Rig rig = Work.OneReading($"{{low: 0.046, high: 0.058, origin: {origin}}}");

        Assert.Equal(words, rig.Prompt("depth 1E").Window.Origin);
        TakenReading reading = rig.Read("depth 1E", "0.0600");

        Assert.Equal(words, reading.Judgement.Origin);
        Assert.Contains($"({words})", reading.Judgement.Detail, StringComparison.Ordinal);
        Assert.Contains("0.0600 in", reading.Judgement.Detail, StringComparison.Ordinal);
        Assert.Contains("by 0.002", reading.Judgement.Detail, StringComparison.Ordinal);
    }

    // Common practice, no source: 52 in an inch field near 0.052 is asked about, never converted.
    [Theory]
    [InlineData("52")]
    [InlineData("1.32")]
    [InlineData("0,052")]
    [InlineData("5.2")]
    [InlineData("-0.052")]
    public void A_slip_of_point_unit_or_sign_is_questioned_and_gives_no_value(string text)
    {
        Rig rig = Work.OneReading("{low: 0.046, aim: 0.052, high: 0.058, origin: maker}");

        RunEvent.EntryQuestioned question = Assert.IsType<RunEvent.EntryQuestioned>(
            Assert.Single(rig.Enter("depth 1I", text))
        );

        Assert.Null(rig.State.Value("depth", 0));
        Assert.Equal(StepView.Open, rig.View("depth 1I"));
        Assert.NotEmpty(question.Meanings);
        Assert.NotNull(rig.Prompt("depth 1I").Question);

        // Typed back, each meaning is taken without another question.
        TakenReading reading = rig.Read("depth 1I", question.Meanings[0]);
        Assert.Equal(question.Meanings[0], reading.Typed);
        Assert.Null(rig.Prompt("depth 1I").Question);
    }

    // Common practice, no source: clearance 0.0035 lies inside 0.0015 to 0.005.
    [Theory]
    [InlineData("0.3435", "0.3400", "0.0035", Verdict.In)]
    [InlineData("0.3415", "0.3400", "0.0015", Verdict.In)]
    [InlineData("0.3450", "0.3400", "0.0050", Verdict.In)]
    [InlineData("0.3451", "0.3400", "0.0051", Verdict.Out)]
    [InlineData("0.3414", "0.3400", "0.0014", Verdict.Out)]
    public void Clearance_is_a_number_with_limits_of_its_own(
        string bore,
        string stem,
        string clearance,
        Verdict verdict
    )
    {
        Rig rig = new(
            Work.Procedure(
                "stem: {of: position, measured-in: length, why: half of it}\nbore: {of: position, measured-in: length, why: the other half}",
                "- measure: stem\n  window: none\n- measure: bore\n  window: none\n  works-out:\n    clearance: {is: \"[bore] - [stem]\", window: clearance}"
            ),
            Work.Head("clearance: {low: 0.0015, high: 0.005, origin: shop}")
        );
        rig.Enter("stem 1E", stem);

        WorkedValue worked = Assert.Single(rig.Read("bore 1E", bore).Worked);

        Assert.Equal(RigShop.Q($"{clearance} in"), worked.Value);
        Assert.Equal(verdict, worked.Judgement.Verdict);
        Assert.Equal(verdict == Verdict.Out ? StepStanding.Out : StepStanding.Done, rig.Standing("bore 1E"));
    }

    // Common practice, no source: a guide 0.002 over its hole is a good fit of iron in iron.
    [Theory]
    [InlineData("0.6270", "0.6250", "0.0020", Verdict.In)]
    [InlineData("0.6256", "0.6250", "0.0006", Verdict.Out)]
    public void A_guide_fit_comes_from_hole_and_guide_as_measured(
        string guide,
        string hole,
        string fit,
        Verdict verdict
    )
    {
        Rig rig = new(
            Work.Procedure(
                "hole: {of: position, measured-in: length, why: as it is}\nguide outside: {of: position, measured-in: length, why: in your hand}",
                "- measure: hole\n  window: none\n- measure: guide outside\n  window: none\n  works-out:\n    fit: {is: \"leastinterference([hole.largest], [guide outside.smallest])\", window: fit}"
            ),
            Work.Head("fit: {low: 0.0015, high: 0.0025, origin: rule of thumb}")
        );

        Assert.Contains("hole", rig.EnterRefused("guide outside 1I", guide).Why, StringComparison.Ordinal);
        rig.Enter("hole 1I", hole);

        WorkedValue worked = Assert.Single(rig.Read("guide outside 1I", guide).Worked);
        Assert.Equal(RigShop.Q($"{fit} in"), worked.Value);
        Assert.Equal(verdict, worked.Judgement.Verdict);
    }

    // Thickness 127.00 over a floor of 126.80 leaves 0.20 although the budget is 0.5; with 0.25 gone from the block and
    // 127.15 thick, with 0.3 the maker's own limit in one cut, 0.25 is left. Common practice, no source.
    [Theory]
    [InlineData("127.00", "0", "0.5", "0.20")]
    [InlineData("127.15", "0.25", "0.3", "0.25")]
    [InlineData("127.15", "0", "0.3", "0.30")]
    public void Of_several_limits_the_smallest_wins(string thickness, string lost, string own, string allowed)
    {
        Rig rig = new(
            Work.Procedure(
                "lost: {of: head, measured-in: mm, why: counts}\nthickness: {of: head, measured-in: mm, why: cracks}",
                "- measure: lost\n  window: none\n- measure: thickness\n  works-out:\n    cut allowed: {is: \"min([thickness] - [spec.thickness.low], [spec.budget] - [lost], [spec.own])\", window: none}",
                rest: "asks-of-the-head:\n  figures: {budget: length, own: length}"
            ),
            Work.Head(
                "thickness: {low: 126.80, origin: maker}",
                "mm",
                rest: $"figures:\n  budget: {{is: 0.5, origin: maker}}\n  own: {{is: {own}, origin: maker}}"
            )
        );
        rig.Enter("lost", $"{lost} mm");

        WorkedValue worked = Assert.Single(rig.Read("thickness", $"{thickness} mm").Worked);

        Assert.True(worked.Value.SameAs(RigShop.Q($"{allowed} mm")), worked.Value.ToString());
    }

    /// <summary>Limits worked out from readings can cross: nothing passes then, and nothing throws.</summary>
    [Fact]
    public void When_worked_out_limits_cross_every_value_is_out_and_the_ways_on_are_open()
    {
        Rig rig = new(
            Work.Procedure(
                "insert: {of: position, measured-in: length, places: [one way, across], why: it fits}\nbore: {of: position, measured-in: length, why: it holds}",
                "- measure: insert\n  window: none\n- measure: bore\n  window: {low: \"[insert.largest] - '0.004 in'\", high: \"[insert.smallest] - '0.002 in'\", origin: shop}"
            ),
            Work.Head("")
        );
        rig.Enter("insert 1I", "1.6300 1.6200");

        TakenReading reading = rig.Read("bore 1I", "1.6200 in");

        Assert.Equal(Verdict.Out, reading.Judgement.Verdict);
        Assert.NotEmpty(rig.Prompt("bore 1I").WaysOn);
    }

    private static string InUnit(decimal inches, bool asInches) =>
        asInches
            ? string.Create(CultureInfo.InvariantCulture, $"{inches} in")
            : string.Create(CultureInfo.InvariantCulture, $"{inches * 25.4m} mm");
}
