using ProcRunner.Runs.Prompts;

namespace ProcRunner.Runs.Tests;

/// <summary>What the readout is said to show after a pass: slips are asked about, and put right without losing the stop.</summary>
public sealed class PassTests
{
    // The target is 0.024: a lost point, a point one place off, a number of the menu; and a cutter that ran on a little.
    [Theory]
    [InlineData("24", true)]
    [InlineData("0.24", true)]
    [InlineData("2", true)]
    [InlineData("0.030", false)]
    public void A_pass_a_long_way_past_the_target_is_asked_about_and_taken_when_it_is_meant(string typed, bool asks)
    {
        Rig rig = CutWork.Make();
        rig.Zero("1I", "0.023");

        Decision.Accepted decided = Assert.IsType<Decision.Accepted>(
            rig.Try(new RunCommand.Enter(rig.At("cut 1I"), typed))
        );

        Assert.Equal(asks, decided.Events is [RunEvent.EntryQuestioned]);
        if (asks)
        {
            RunEvent.EntryQuestioned asked = rig.Prompt("cut 1I").Question!;
            Assert.Contains("long way past", asked.Why, StringComparison.Ordinal);
            Assert.Equal(Awaited.Readout, rig.Prompt("cut 1I").Awaits);
            rig.Enter("cut 1I", Assert.Single(asked.Meanings));
        }

        Assert.Null(rig.Prompt("cut 1I").Question);
        Assert.Equal(Awaited.Reading, rig.Prompt("cut 1I").Awaits);
    }

    [Fact]
    public void A_question_at_the_readout_is_answered_by_what_it_shows()
    {
        Rig rig = CutWork.Make();
        rig.Zero("1I", "0.023");
        rig.Try(new RunCommand.Enter(rig.At("cut 1I"), "0,020"));
        Assert.NotNull(rig.Prompt("cut 1I").Question);

        rig.Enter("cut 1I", "0.020");

        Assert.Null(rig.Prompt("cut 1I").Question);
        Assert.Equal(0.004m, rig.Prompt("cut 1I").Target!.Left.Value);
    }

    // A pass typed too deep isn't the stop before the aim: once it is put right, the cut still stops there to be measured.
    [Fact]
    public void A_corrected_pass_has_its_stop_again()
    {
        Rig rig = CutWork.Make();
        rig.Zero("1I", "0.023");
        rig.Enter("cut 1I", "0.029");

        rig.Correct("cut 1I", "0.010");

        Assert.True(rig.Prompt("cut 1I").Target!.StopsShort);
        Assert.Equal(0.024m, rig.Prompt("cut 1I").Target!.Show.Value);
        rig.Enter("cut 1I", "0.024");
        Assert.Equal(Awaited.Reading, rig.Prompt("cut 1I").Awaits);
    }
}
