using System.Text;
using ProcRunner.Practice.Rehearsals;
using ProcRunner.Trail;

namespace ProcRunner.Practice.Tests;

/// <summary>Practice heads of the demo procedure, many at a time.</summary>
public class RehearsalTests
{
    // The strongest test of the run there is: whatever happens on the way, no head is released that is truly out of limits
    // unless a gauge's error let it pass. The readings and their uncertainty say how many to expect (JCGM 106:2012, 7.4); the
    // process centres most values, so fewer come.
    [Fact]
    public void No_head_is_released_out_of_spec_unless_a_gauge_erred()
    {
        Tally tally = Rehearsal.Run(Demo.Binding, 2026, 60, 2, _ => { });

        Assert.Equal(60, tally.Released + tally.Scrapped);
        Assert.True(tally.Released > 50);
        Assert.True(tally.FirstTime < tally.Released);
        Assert.True(tally.Unexplained == 0, string.Join('\n', tally.Escapes.Where(e => e.Value.IsUnexplained)));
        Assert.True(
            tally.Escaped <= tally.Expected + (4 * Math.Sqrt(tally.Expected)),
            $"{tally.Escaped} of {tally.Expected}"
        );
    }

    [Fact]
    public void The_same_seed_gives_the_same_on_any_number_of_cores()
    {
        string one = Told(1, 5);

        Assert.Equal(one, Told(2, 5));
        Assert.NotEqual(one, Told(2, 6));
    }

    [Fact]
    public void The_page_holds_no_script_and_fetches_nothing()
    {
        Tally tally = Rehearsal.Run(Demo.Binding, 1, 3, 1, _ => { });
        string page = RehearsalPage.Of(new RehearsalResult(Demo.Binding, 1, tally, [], null, []));

        Assert.Contains("PRACTICE", page, StringComparison.Ordinal);
        Assert.Contains("<svg", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("http", page, StringComparison.OrdinalIgnoreCase);
    }

    private static string Told(int cores, ulong seed)
    {
        Tally tally = Rehearsal.Run(Demo.Binding, seed, 24, cores, _ => { });
        return Encoding.UTF8.GetString(
            CanonicalJson.Write(RehearsalJson.Of(new RehearsalResult(Demo.Binding, seed, tally, [], null, [])))
        );
    }
}
