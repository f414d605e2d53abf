using ProcRunner.Quantities;

namespace ProcRunner.Runs.Tests;

/// <summary>Seats are cut deeper by the skim that is still to come.</summary>
public sealed class PlannedSkimTests
{
    private const string Cut = "seat cut / recession 1I";

    private static Rig Begun(string skim)
    {
        Rig rig = new(SmallWork.Procedure, SmallWork.Head);
        rig.Until("planned skim");
        rig.Enter("planned skim", skim);
        return rig;
    }

    [Fact]
    public void It_is_signed_before_the_first_seat_is_cut()
    {
        Rig rig = Begun("0.004");

        rig.EnterRefused("seat 1I", "0.030 0.030");
        rig.Refuses(rig.SignOf(rig.At("approved"), RigShop.Worker));
        rig.Sign("approved");
        rig.Enter("seat 1I", "0.030 0.030");
    }

    // 0.60 recessed, 0.25 to be skimmed, window 0.45 to 0.90: to be cut at least 0.10 and at most 0.55 deeper. Plane
    // geometry: the skim takes recession off one for one.
    [Theory]
    [InlineData("0.60", Verdict.Out)]
    [InlineData("0.69", Verdict.Out)]
    [InlineData("0.70", Verdict.In)] // 0.10 deeper
    [InlineData("1.15", Verdict.In)] // 0.55 deeper
    [InlineData("1.151", Verdict.Out)]
    public void The_window_after_the_skim_is_shifted_before_it(string text, Verdict verdict)
    {
        Rig rig = new(
            Work.Procedure(
                "planned skim: {of: head, measured-in: mm, why: it shifts}\ndepth: {of: position, measured-in: mm, why: it matters}",
                "- measure: planned skim\n  window: none\n- measure: depth\n  shift: \"[planned skim]\""
            ),
            Work.Head("depth: {low: 0.45, high: 0.90, origin: maker}", "mm")
        );
        rig.Enter("planned skim", "0.25");

        Judgement judged = rig.Read("depth 1I", text).Judgement;

        Assert.Equal(verdict, judged.Verdict);
        Assert.True(judged.Low!.Value.SameAs(RigShop.Q("0.70 mm")));
        Assert.True(judged.High!.Value.SameAs(RigShop.Q("1.15 mm")));
        Assert.Contains("shifted by 0.25", judged.Origin, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0.000", "0.0500 in", "0.0520 in", "0.0560 in")]
    [InlineData("0.004", "0.0500 in", "0.0560 in", "0.0620 in")]
    [InlineData("0.010", "0.0560 in", "0.0620 in", "0.0680 in")]
    public void Low_aim_and_high_all_shift(string skim, string low, string aim, string high)
    {
        Rig rig = Begun(skim);
        rig.Sign("approved");
        rig.Enter("seat 1I", "0.030 0.030");
        rig.Enter("seat 1I", "0");
        Judgement window = rig.Prompt(Cut).Window;
        decimal by = RigShop.Q(skim + " in").Value;

        Assert.Equal(0.046m + by, window.Low!.Value.Value);
        Assert.Equal(RigShop.Q(aim).Value, window.Aim!.Value.Value);
        Assert.Equal(0.058m + by, window.High!.Value.Value);
        Assert.True(low.Length + high.Length > 0);
        Assert.Equal(0.022m - 0.005m + by, rig.Prompt(Cut).Target!.Show.Value); // (aim - 0.030) less the allowance
    }

    [Fact]
    public void Another_skim_reopens_targets_gates_and_its_approval()
    {
        Rig rig = Begun("0.004");
        rig.Sign("approved");
        for (int i = 0; i < 60 && rig.View("runout 1I") != StepView.Open; i++)
        {
            rig.Next();
        }

        Assert.Equal(StepPhase.Done, rig.Phase(Cut));
        rig.Correct("planned skim", "0.008");

        Assert.True(rig.Value("recession", "1I").Stale);
        Assert.Equal(StepView.Open, rig.View("approved"));
        rig.EnterRefused("seat 1E", "0.030 0.030");
        rig.Sign("approved");

        // 0.056 was cut; 0.060 is wanted now: more is to be cut, from a zero set anew.
        TakenReading reading = rig.Read(Cut, "0.056 in; 0.056 in");
        Assert.Equal(Verdict.Short, reading.Judgement.Verdict);
        Assert.Equal("0.0600 in", reading.Judgement.Aim.ToString());
        rig.Enter("seat 1I", "0.056 in; 0.056 in");
        rig.Enter("seat 1I", "0");
        Assert.Equal("0.0040 in", rig.Target(Cut));
        rig.ToRelease();
    }

    [Fact]
    public void Cancelled_it_shifts_nothing_and_too_deep_a_seat_shows()
    {
        Rig rig = Begun("0.010");
        rig.Sign("approved");
        for (int i = 0; i < 60 && rig.View("runout 1I") != StepView.Open; i++)
        {
            rig.Next();
        }

        rig.Correct("planned skim", "0");
        rig.Sign("approved");

        Assert.Equal(Verdict.Out, rig.Read(Cut, "0.062 in; 0.062 in").Judgement.Verdict);
        Assert.Equal(StepView.NotHere, rig.View("skim the deck"));
    }

    [Fact]
    public void After_the_skim_recession_is_asked_again_within_its_own_window()
    {
        Rig rig = Begun("0.004");
        rig.Sign("approved");
        for (int i = 0; i < 60 && rig.View("skim taken") != StepView.Open; i++)
        {
            rig.Next();
        }

        rig.Enter("skim taken", "0.004");
        rig.Enter("thickness after", "3.921");
        Assert.True(rig.Value("recession", "1E").Stale);
        Judgement judged = rig.Read("recession after 1E", "0.0515 in; 0.0520 in").Judgement;

        Assert.Equal((0.046m, 0.058m), (judged.Low!.Value.Value, judged.High!.Value.Value));
        Assert.Equal(Verdict.In, judged.Verdict);
        Assert.Equal(Units.Inch, judged.Low.Value.Unit);
    }
}
