using System.Text.RegularExpressions;
using ProcRunner.Procedures;
using ProcRunner.Runs;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Screens.Run;

namespace ProcRunner.Tui.Tests.Run;

/// <summary>Where work can hurt someone, the step itself says so, not only the page before its stage.</summary>
public sealed class CautionTests
{
    // What the work is called, and what its caution speaks of. Common practice, no source.
    [Theory]
    [InlineData("^warm the head", "hot head")]
    [InlineData("chill", "dry ice and liquid nitrogen")]
    [InlineData(@"\bpress it", "press|shatter|eyes covered")]
    [InlineData(@"drive[ns]?\b|peen|drill", "eyes covered|face shield|shatter")]
    [InlineData(@"blow every|compressed air", "compressed air")]
    [InlineData(@"\bream\b|\bbore for|narrow the seat|cut the|reface", "rotating|grinding wheel")]
    [InlineData("magnetic", "magnetic field")]
    [InlineData("dye", "solvent")]
    [InlineData("^(clean|wash)$", "caustic")]
    [InlineData("pressure test", "bleed it")]
    public void A_step_that_can_hurt_shows_its_caution(string work, string caution)
    {
        Plan plan = DemoShop.ReadPlan().Texts!.Plan;
        Step[] steps =
        [
            .. plan
                .Steps.Where(s => s.Work is StepWork.Do or StepWork.Fit or StepWork.Cut or StepWork.Inspect)
                .Where(s => Is(work, s.Name) || (s.Work is not StepWork.Inspect && Is(work, s.Say))),
        ];

        Assert.NotEmpty(steps);
        Assert.All(
            steps,
            s =>
                Assert.True(CautionWords.At(plan, s).Any(c => Is(caution, c.Text)), $"{s.FullName} has no such caution")
        );
    }

    [Fact]
    public void Every_stage_defers_to_the_shop_the_local_codes_and_licensed_practice()
    {
        Plan plan = DemoShop.ReadPlan().Texts!.Plan;
        Assert.All(
            plan.Procedure.Stages,
            s => Assert.Contains(s.Cautions, c => Is("local codes and licensed practice", c.Text))
        );
    }

    private static bool Is(string pattern, string text) =>
        Regex.IsMatch(text, pattern, RegexOptions.None, TimeSpan.FromSeconds(1));
}
