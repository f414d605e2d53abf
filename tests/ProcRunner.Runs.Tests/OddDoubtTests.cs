using static ProcRunner.Runs.Tests.DoubtWork;

namespace ProcRunner.Runs.Tests;

/// <summary>A position far from the median of its kind, before more metal goes. The thresholds are common practice, no source.</summary>
public sealed class OddDoubtTests
{
    // Three intakes and more make a kind; the width of the limits, 0.012, is what two of them may differ by.
    [Theory]
    [InlineData("0.0520", "0.0522", "0.0518", "0.0398", true)]
    [InlineData("0.0520", "0.0522", "0.0518", "0.0399", false)]
    [InlineData("0.0400", "0.0520", "0.0522", "0.0524", false)] // the odd one is not the one just read
    [InlineData("0.0100", "0.0300", "0.0500", "0.0300", false)]
    public void Far_from_the_median_of_its_kind_is_asked_about_before_more_metal_goes(
        string first,
        string second,
        string third,
        string fourth,
        bool asked
    )
    {
        Rig rig = Seats();
        rig.Enter("found 1I", first);
        rig.Enter("found 2I", second);
        rig.Enter("found 3I", third);
        foreach (string other in new[] { "1E", "2E", "3E" })
        {
            rig.Enter($"found {other}", "0.0900");
        }

        IReadOnlyList<RunEvent> events = rig.Enter("found 4I", fourth);

        Assert.Equal(asked, IsAsked(events));
        if (asked)
        {
            string why = Asked(events).Why;
            Assert.Contains("0.0121 in less than 0.0519 in, the median with 1I, 2I, 3I", why, StringComparison.Ordinal);
            Assert.Contains("Before more metal goes", why, StringComparison.Ordinal);
            Assert.False(IsAsked(rig.Enter("found 4I", fourth)));
        }
    }

    [Fact]
    public void One_that_was_odd_before_its_kind_was_known_is_asked_about_when_it_is_touched_off()
    {
        Rig rig = Seats();
        foreach (
            (string place, string read) in new[]
            {
                ("1I", "0.0300"),
                ("2I", "0.0520"),
                ("3I", "0.0522"),
                ("4I", "0.0518"),
            }
        )
        {
            Assert.False(IsAsked(rig.Enter($"found {place}", read)));
        }

        foreach (string place in new[] { "1E", "2E", "3E", "4E" })
        {
            rig.Enter($"found {place}", "0.0520");
        }

        foreach (string place in new[] { "1I", "2I", "3I", "4I", "1E", "2E", "3E", "4E" })
        {
            rig.Enter($"new insert {place}", "no");
        }

        Assert.False(IsAsked(rig.Enter("seat 2I", "0.0521")));
        Assert.True(IsAsked(rig.Enter("seat 1I", "0.0301")));
        Assert.False(IsAsked(rig.Enter("seat 1I", "0.0301")));
        Same(rig);
    }

    [Fact]
    public void Positions_about_which_something_else_was_decided_are_no_measure_for_each_other()
    {
        Rig rig = Seats();
        foreach (string place in new[] { "1I", "2I", "3I", "4I", "1E", "2E", "3E", "4E" })
        {
            rig.Enter($"found {place}", "0.0520");
        }

        foreach (string place in new[] { "1I", "2I", "3I", "4I", "1E", "2E", "3E", "4E" })
        {
            rig.Enter($"new insert {place}", place == "3I" ? "yes" : "no");
        }

        Assert.False(IsAsked(rig.Enter("seat 3I", "0.0300")));
    }
}
