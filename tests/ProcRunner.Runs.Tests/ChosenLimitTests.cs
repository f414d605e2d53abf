namespace ProcRunner.Runs.Tests;

/// <summary>A limit that nobody knows is asked for, and recorded with its reason; nobody overrides one that is known.</summary>
public sealed class ChosenLimitTests
{
    private const string Procedure = "- measure: depth";

    private static Rig Make(string limits) =>
        new(
            Work.Procedure("depth: {of: position, measured-in: length, why: it matters}", Procedure),
            Work.Head(limits)
        );

    [Fact]
    public void Nothing_is_taken_before_it_is_chosen_and_a_reason_is_wanted()
    {
        Rig rig = Make("depth: {ask: the maker's figure isn't known}");

        Assert.Contains("isn't known", rig.EnterRefused("depth 1I", "0.052").Why, StringComparison.Ordinal);
        Assert.Contains("isn't known", rig.Prompt("depth 1I").NoLimits, StringComparison.Ordinal);
        rig.Refuses(Choose(null, "0.046 in", "0.058 in", reason: " "));
        rig.Refuses(Choose(null, "0.058 in", "0.046 in"));
        rig.Refuses(Choose(null, "46 deg", "58 deg"));
        rig.Refuses(Choose(null, null, null));
        rig.Refuses(Choose(17, "0.046 in", "0.058 in"));
        RunEvent.LimitChosen chosen = rig.Do(Choose(null, "0.046 in", "0.058 in"))
            .OfType<RunEvent.LimitChosen>()
            .Single();

        Assert.Equal("the builder's own figure", chosen.Reason);
        TakenReading reading = rig.Read("depth 1I", "0.0581");
        Assert.Equal(Verdict.Out, reading.Judgement.Verdict);
        Assert.Contains("chosen in this job", reading.Judgement.Origin, StringComparison.Ordinal);
    }

    [Fact]
    public void One_position_or_all_of_them()
    {
        Rig rig = Make("depth: {ask: not known}");
        rig.Do(Choose(1, "0.046 in", "0.058 in"));

        Assert.Equal(Verdict.In, rig.Read("depth 1E", "0.050").Judgement.Verdict);
        rig.EnterRefused("depth 1I", "0.050");
    }

    [Fact]
    public void What_is_chosen_for_all_leaves_the_makers_figures_of_another_kind_alone()
    {
        Rig rig = Make(
            """
            I:
              depth: {low: 0.010, high: 0.020, origin: maker}
            E:
              depth: {ask: not known}
            """
        );
        rig.Do(Choose(null, "0.046 in", "0.058 in"));

        Assert.Equal("maker", rig.Read("depth 1I", "0.015").Judgement.Origin);
        Assert.Equal(Verdict.In, rig.Read("depth 1E", "0.050").Judgement.Verdict);
        rig.Refuses(Choose(0, "0.046 in", "0.058 in"));
    }

    [Fact]
    public void A_limit_of_the_head_spec_is_not_open_to_be_chosen() =>
        Make("depth: {low: 0.010, high: 0.020, origin: maker}").Refuses(Choose(null, "0.046 in", "0.058 in"));

    [Fact]
    public void Choosing_again_voids_what_was_judged_by_it()
    {
        Rig rig = Make("depth: {ask: not known}");
        rig.Do(Choose(null, "0.046 in", "0.058 in"));
        rig.Enter("depth 1I", "0.050");

        rig.Do(Choose(null, "0.052 in", "0.058 in"));

        Assert.True(rig.Value("depth", "1I").Stale);
        Assert.Equal(StepView.Open, rig.View("depth 1I"));
        Assert.Equal(Verdict.Out, rig.Read("depth 1I", "0.050").Judgement.Verdict);
    }

    private static RunCommand.ChooseLimit Choose(
        int? position,
        string? low,
        string? high,
        string reason = "the builder's own figure"
    ) =>
        new(
            "depth",
            position,
            low is null ? null : RigShop.Q(low),
            null,
            high is null ? null : RigShop.Q(high),
            reason
        );
}
