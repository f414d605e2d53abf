using ProcRunner.Testing;

namespace ProcRunner.Endurance.Tests;

public class HostileInputTests
{
    /// <summary>The short form of <c>ProcRunner.Endurance hostile</c>.</summary>
    [Fact]
    public void No_hostile_input_is_taken_amiss()
    {
        using TempFolder folder = new();
        using ReleasedJob job = new(folder.Path);

        HostileTally tally = new HostileInputs(job, seed: 7).Run(
            decided: 4_000,
            lines: 1_200,
            loaded: 300,
            imported: 300
        );

        Assert.Equal(5_800, tally.All);
        Assert.InRange(tally.Decided.Taken, 100, 3_900);
        Assert.InRange(tally.Imported.Taken, 0, 290);
    }
}
