using ProcRunner.Testing;

namespace ProcRunner.Endurance.Tests;

public class KillRoundTests
{
    /// <summary>The short form of <c>ProcRunner.Endurance kills</c>.</summary>
    [Fact]
    public void Nothing_acknowledged_is_lost_and_the_run_goes_on_at_the_same_step()
    {
        using TempFolder folder = new();

        KillTally tally = new KillRounds(BuiltProgram.Path, folder.Path, seed: 7).Run(rounds: 12);

        Assert.Equal(12, tally.Rounds);
        Assert.True(tally.Acknowledged > 0, tally.ToString());
    }
}
