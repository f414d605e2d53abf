namespace ProcRunner.Runs.Tests;

/// <summary>Shims, springs and feelers, by the formulas a procedure writes.</summary>
public sealed class StockAndSpringTests
{
    // Found 1.762 for 1.700: a 0.060 shim leaves 1.702. Found 1.778: 0.060 + 0.015 is over a stack of 0.060.
    // Height 1.800, lift 0.472, solid 1.250: 0.078 is left, so with 0.050 kept at most 0.028 of shim. Common practice, no
    // source.
    [Theory]
    [InlineData("1.762", "0.060", "1.702", Verdict.In)]
    [InlineData("1.778", "0.075", "1.703", Verdict.Out)]
    public void A_shim_stack_over_its_limit_is_refused(string height, string stack, string leaves, Verdict verdict)
    {
        Rig rig = new(
            Work.Procedure(
                "height: {of: position, measured-in: length, why: it matters}\nstack: {of: position, measured-in: length, why: it matters}",
                """
                - measure: height
                  window: none
                  works-out:
                    wanted shim: {is: "shimfor([height], '1.700 in')", window: none}
                - measure: stack
                  window: {high: "'0.060 in'", origin: rule of thumb}
                  works-out:
                    height with shims: {is: "[height] - [stack]", window: none}
                  ways-on:
                  - measure again
                  - another spring seat: {back-to: height}
                """
            ),
            Work.Head("")
        );
        rig.Enter("height 1I", height);

        TakenReading reading = rig.Read("stack 1I", stack);

        Assert.Equal(verdict, reading.Judgement.Verdict);
        Assert.True(reading.Worked[0].Value.SameAs(RigShop.Q($"{leaves} in")));
        Assert.Equal(
            verdict == Verdict.Out ? ["measure again", "another spring seat"] : [],
            rig.Prompt("stack 1I").WaysOn.Select(w => w.Text)
        );
    }

    [Theory]
    [InlineData("0.028", Verdict.In)]
    [InlineData("0.029", Verdict.Out)]
    public void Shims_leave_the_coil_bind_margin(string shims, Verdict verdict)
    {
        Rig rig = new(
            Work.Procedure(
                "shims: {of: position, measured-in: length, why: it matters}",
                """
                - measure: shims
                  window: none
                  works-out:
                    margin: {is: "'1.800 in' - '0.472 in' - '1.250 in' - [shims]", window: {low: "'0.050 in'", origin: rule of thumb}}
                """
            ),
            Work.Head("")
        );

        Assert.Equal(verdict, rig.Read("shims 1I", shims).Worked[0].Judgement.Verdict);
    }

    // 97.5 wanted, 86 read: (86 - 97.5) / 97.5 = -11.8 %: replaced, though a shim "would do". Common practice, no source.
    [Theory]
    [InlineData("86", Verdict.Out)]
    [InlineData("87.75", Verdict.In)] // exactly -10 %
    [InlineData("87.7", Verdict.Out)]
    public void A_weak_spring_is_out_whatever_its_height(string load, Verdict verdict)
    {
        Rig rig = new(
            Work.Procedure(
                "load: {of: position, measured-in: lbf, why: it matters}",
                """
                - measure: load
                  window: none
                  works-out:
                    off: {is: "percentoff([load], '97.5 lbf')", window: {low: "-0.1", origin: shop}}
                """
            ),
            Work.Head("")
        );

        Assert.Equal(verdict, rig.Read("load 1I", load).Worked[0].Judgement.Verdict);
    }

    // A feeler gives two figures with the clearance between them: shim = old + lash - wanted is an interval too.
    [Fact]
    public void A_feelers_interval_stays_one_through_the_arithmetic()
    {
        Rig rig = new(
            Work.Procedure(
                "lash: {of: position, measured-in: length, places: [slides, refuses], why: it matters}",
                """
                - measure: lash
                  window: none
                  works-out:
                    thinnest shim: {is: "'0.120 in' + [lash.slides] - '0.009 in'", window: none}
                    thickest shim: {is: "'0.120 in' + [lash.refuses] - '0.009 in'", window: none}
                """
            ),
            Work.Head("")
        );

        TakenReading reading = rig.Read("lash 1I", "0.012 0.013");

        Assert.Equal(["0.1230 in", "0.1240 in"], reading.Worked.Select(w => w.Value.ToString()));
        Assert.Equal(["slides", "refuses"], reading.Places.Select(p => p.Place));
    }
}
