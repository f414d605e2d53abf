using ProcRunner.Testing;

namespace ProcRunner.Endurance.Tests;

public class ByteTrialTests
{
    /// <summary>The short form of <c>ProcRunner.Endurance bytes</c>.</summary>
    [Fact]
    public void Random_damage_is_found_but_for_the_end_that_the_book_doesn_t_know()
    {
        using TempFolder folder = new();

        (int found, int excepted) = new ByteTrials(folder["shop"], entries: 700, seed: 3).Run(trials: 100);

        Assert.Equal(100, found + excepted);
        Assert.InRange(found, 60, 100);
    }
}
