using FsCheck.Xunit;
using static ProcRunner.Runs.Tests.DoubtWork;

namespace ProcRunner.Runs.Tests;

/// <summary>A reading that fits what another position was found with. The thresholds are common practice, no source.</summary>
public sealed class SwapDoubtTests
{
    [Fact]
    public void A_reading_that_fits_what_another_position_was_found_with_asks_whether_parts_are_swapped()
    {
        Rig rig = AsFound(Depth, Limit, RigShop.State);
        Found(rig, "0.0512", "0.0548", "0.0530", "0.0560");

        RunEvent.EntryQuestioned question = Asked(rig.Enter("once more 1I", "0.0547"));

        Assert.Equal(
            "Read 0.0547 in; as found here 0.0512 in, but 0.0548 in as found at 1E. Are parts swapped, or is this another position? "
                + "Measure again: the same reading twice is taken.",
            question.Why
        );
        Assert.Equal(RigShop.Q("0.0547 in"), rig.Read("once more 1I", "0.0547").Value);
        Same(rig);
    }

    /// <summary>Any two positions, their parts changed places: both are asked about, and nobody else is.</summary>
    [Property(MaxTest = 40)]
    public bool Whichever_two_are_swapped_both_are_asked_about(byte one, byte other)
    {
        string[] names = ["1I", "1E", "2I", "2E"];
        string[] found = ["0.0500", "0.0520", "0.0540", "0.0560"];
        Rig rig = AsFound(Depth, Limit, RigShop.State);
        Found(rig, found);
        string[] now = [.. found];
        (int a, int b) = (one % 4, other % 4);
        (now[a], now[b]) = (now[b], now[a]);
        return Enumerable
            .Range(0, 4)
            .All(i => IsAsked(rig.Enter($"once more {names[i]}", now[i])) == (a != b && (i == a || i == b)));
    }

    [Theory]
    [InlineData("0.0517")] // what two readings may differ by
    [InlineData("0.0520")] // off, but it fits nobody
    [InlineData("0.0600")]
    public void What_fits_no_other_position_better_raises_no_such_question(string read)
    {
        Rig rig = AsFound(Depth, Limit, RigShop.State);
        Found(rig, "0.0512", "0.0548", "0.0530", "0.0560");

        Assert.False(IsAsked(rig.Enter("once more 1I", read)));
    }
}
