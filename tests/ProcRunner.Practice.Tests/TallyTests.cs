using MathNet.Numerics.Statistics;
using ProcRunner.Lessons;
using ProcRunner.Practice.Operators;
using ProcRunner.Practice.Rehearsals;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Shop;

namespace ProcRunner.Practice.Tests;

/// <summary>What many heads come to, on heads made up by hand.</summary>
public class TallyTests
{
    private static Plan Plan => Demo.Binding.Plan;

    // JCGM 106:2012: the breakdown voltage of 7.4 (92 %), the burst pressure (99 %) and the oil's viscosity (66 %); the digits from
    // the normal law by MathNet.Numerics. What is expected out is what is left of 1.
    [Theory]
    [InlineData(-5.47, 0.05, null, -5.40, 0.9192433408)]
    [InlineData(509.7, 8.6, 490.0, null, 0.9890095474)]
    [InlineData(13.6, 1.8, 12.5, 16.3, 0.6626297865)]
    public void The_chance_of_being_in_limits_is_that_of_the_standard(
        double read,
        double standard,
        double? low,
        double? high,
        double chance
    )
    {
        Tally tally = new(Plan);
        Held value = Value(read, high + 1000 ?? low!.Value - 1000, low, high, standard);
        tally.Add(0, Head(values: [value]));

        Assert.Equal(1 - chance, tally.Expected, 1e-9);
        Assert.Equal(chance, tally.Escapes.Single().Conforms, 1e-9);
        Assert.Equal(1, tally.Conformance.Sum(b => b.Values));
        Assert.Equal(1, tally.Conformance[ConformanceBin.IndexOf(chance)].Out);
    }

    // Read 10.00 where up to 10.05 passes, by a gauge of 0.01; true 10.06 is six deviations off, 10.0601 more than any reading is.
    [Theory]
    [InlineData(10.0, 10.06, 0.01, false, false, false, false)]
    [InlineData(10.0, 10.0602, 0.01, false, false, false, true)]
    [InlineData(10.0, 10.50, 0.01, false, true, false, false)]
    [InlineData(10.0, 10.06, 0.01, true, false, false, true)]
    [InlineData(10.0, 10.06, 0.01, true, false, true, false)]
    [InlineData(10.051, 10.06, 0.01, false, false, false, true)]
    [InlineData(10.0, 10.0501, 0, false, false, false, true)]
    [InlineData(10.0, 10.05, 0, false, false, false, false)]
    public void Only_a_gauges_error_explains_a_value_out_of_limits(
        double read,
        double truth,
        double standard,
        bool moved,
        bool slipped,
        bool conceded,
        bool unexplained
    )
    {
        Held value = Value(read, truth, 9.95, 10.05, standard) with
        {
            Moved = moved,
            Slipped = slipped,
            Conceded = conceded,
        };
        Tally tally = new(Plan);
        tally.Add(3, Head(values: [value]));

        Assert.Equal(unexplained ? 1 : 0, tally.Unexplained);
        Assert.Equal(truth > 10.05 && !conceded ? 1 : 0, tally.Escaped);
        Assert.Equal(truth > 10.05 && conceded ? 1 : 0, tally.ConcededOut);
    }

    // Two released, one of them after a refusal; one given up at its last refusal; one that came to no end.
    [Fact]
    public void Ends_are_counted_and_where_they_came()
    {
        At here = new(3, 0);
        At there = new(5, At.Head);
        Tally tally = new(Plan);
        tally.Add(0, Head());
        tally.Add(1, Head(refusals: [(here, "again"), (here, "rework"), (there, "again")]));
        tally.Add(2, Head(end: HeadEnd.Scrapped, refusals: [(here, "again"), (there, "scrap")]));
        tally.Add(3, Head(end: HeadEnd.Stuck, why: "nothing is open"));

        Assert.Equal((4, 2, 1, 1), (tally.Heads, tally.Released, tally.FirstTime, tally.Scrapped));
        Assert.Equal([true, false, false, false], tally.FirstTimes);
        Assert.Equal((2, 2), (tally.RefusedAt[3], tally.RefusedAt[5]));
        Assert.Equal((5, 1L), (tally.ScrappedAt.Single().Key, tally.ScrappedAt.Single().Value));
        Assert.Equal(("nothing is open", 1L), (tally.Stuck.Single().Key, tally.Stuck.Single().Value));
    }

    // Room to 2.00: 0.3, 0.1, -0.1; mean 0.1, deviation 0.2; one too deep. Exactly at the limit isn't.
    [Fact]
    public void Cuts_are_counted_with_the_room_they_left()
    {
        Tally tally = new(Plan);
        CutEnd[] cuts = [.. new[] { 1.7, 1.9, 2.1 }.Select(deep => new CutEnd(new At(7, 0), deep, 2.0))];
        tally.Add(0, Head(cuts: cuts));

        CutCount count = tally.CutsAt[7];
        Assert.Equal((3, 1, 3, 1), (count.Cuts, count.Over, tally.Cuts, tally.CutsOver));
        Assert.Equal(0.1, count.Room, 1e-12);
        Assert.Equal(0.2, count.Deviation, 1e-12);
        Assert.False(new CutEnd(new At(7, 0), 2.0, 2.0).IsOver);
        Assert.True(new CutEnd(new At(7, 0), 2.000001, 2.0).IsOver);
        Assert.False(new CutEnd(new At(7, 0), 99, null).IsOver);
    }

    // NIST/SEMATECH e-Handbook, 6.1.6: limits 8 and 20, mean 16, deviation 2 give Cpk 0.6667; 14, 16 and 18 have them. From the other
    // side the same.
    [Theory]
    [InlineData(8, 20)]
    [InlineData(12, 24)]
    public void Capability_is_the_nearer_limits(double low, double high)
    {
        Distribution spread = new(low, high, low - 3, high + 3);
        foreach (double value in new[] { 14.0, 16, 18 })
        {
            spread.Add(value, false, low, high);
        }

        Assert.Equal(0.6667, spread.Capability!.Value, 5e-5);
        Assert.Equal((3, 14.0, 18.0), (spread.Count, spread.Least, spread.Most));
    }

    // From 0 to 24 in bars of one: what lies beyond an end falls into its bar, and bars wholly beyond a limit are out.
    [Fact]
    public void Values_fall_into_their_bars()
    {
        Distribution spread = new(4, 20, 0, 24);
        foreach (double value in new[] { -7.0, 0.5, 4.2, 4.9, 23.5, 99 })
        {
            spread.Add(value, value is < 4 or > 20, 4, 20);
        }

        Assert.Equal((2, 2, 2), (spread.Histogram[0], spread.Histogram[4], spread.Histogram[23]));
        Assert.Equal(4, spread.Out);
        Assert.Equal([0, 1, 2, 3, 20, 21, 22, 23], Enumerable.Range(0, Distribution.Bars).Where(spread.IsOut));
    }

    // Samples put together have the mean and deviation of all their values (MathNet.Numerics).
    [Fact]
    public void Parts_put_together_are_the_whole()
    {
        double[] values = [3.1, -2.5, 8.25, 4, 4, 17.5, -0.125];
        Tally whole = new(Plan);
        Tally first = new(Plan);
        Tally second = new(Plan);
        for (int i = 0; i < values.Length; i++)
        {
            HeadOutcome head = Head(
                cuts: [new CutEnd(new At(7, 0), 20 - values[i], 20)],
                values: [Value(values[i], values[i], -5, 10, 0.5)]
            );
            whole.Add(i, head);
            (i < 3 ? first : second).Add(i, head);
        }

        first.Add(second);
        Distribution spread = first.Spreads.Values.Single();
        Assert.Equal(values.Mean(), spread.Mean, 1e-12);
        Assert.Equal(values.StandardDeviation(), spread.Deviation, 1e-12);
        Assert.Equal(values.StandardDeviation(), first.CutsAt[7].Deviation, 1e-12);
        Assert.Equal((-2.5, 17.5, 7), (spread.Least, spread.Most, spread.Count));
        Assert.Equal(whole.Spreads.Values.Single().Histogram, spread.Histogram);
        Assert.Equal(whole.Expected, first.Expected, 1e-12);
        Assert.Equal(whole.Escapes, first.Escapes);
        Assert.Equal(whole.FirstTimes, first.FirstTimes);
        Assert.Equal((whole.Released, whole.Judged, whole.Escaped), (first.Released, first.Judged, first.Escaped));
    }

    // What nothing explains is listed first and named.
    [Fact]
    public void The_list_names_head_place_truth_and_reading()
    {
        Held near = Value(10, 10.06, 9.95, 10.05, 0.01) with { Place = "rear" };
        Held far = Value(10, 11, 9.95, 10.05, 0.01);
        Tally tally = new(Plan);
        tally.Add(4, Head(values: [near]));
        tally.Add(17, Head(values: [far]));
        string[] lines = [.. RehearsalLines.Of(new RehearsalResult(Demo.Binding, 1, tally, [], null, []))];

        Assert.Equal([17, 4], tally.Escapes.Select(e => e.Head));
        Assert.Contains(lines, l => l.Contains("head 17: ", StringComparison.Ordinal));
        Assert.Contains(
            lines,
            l => l.Contains("head 4: ", StringComparison.Ordinal) && l.Contains(", rear", StringComparison.Ordinal)
        );
        string whole = string.Join('\n', lines);
        Assert.Contains("NOT EXPLAINED", whole, StringComparison.Ordinal);
        Assert.Matches("that no gauge's error explains +1", whole);
        Assert.Matches("values, of all judged +2 +100.0 %", whole);
        Assert.StartsWith("PRACTICE. ", whole, StringComparison.Ordinal);
    }

    [Fact]
    public void A_gauge_without_error_has_none_left_and_one_that_errs_more_errs_more_in_everything()
    {
        Gauge gauge = Demo.Setup.Gauges[0].Gauge;
        GaugeCharacter all = new(gauge, 1, 2, 3, 0.1, 0.2, 4)
        {
            PilotBend = 5,
            DirtySeats = 0.3,
            DirtBy = 6,
        };
        Bindings.Binding binding = Demo.Binding.With(Demo.Setup with { Gauges = [all] });
        GaugeCharacter none = Rehearsal.WithoutErrorOf(binding, gauge.Kind).Setup.Gauges.Single();
        GaugeCharacter more = Rehearsal.WithErrorOf(binding, gauge.Kind, 3).Setup.Gauges.Single();

        Assert.Equal(
            (0, 0, 0, 0, 0, 0, 0),
            (none.Bias, none.Spread, none.Feel, none.WrongTurns, none.NotZeroed, none.PilotBend, none.DirtySeats)
        );
        Assert.Equal(gauge, none.Gauge);
        Assert.Equal((3, 6, 9, 15, 18), (more.Bias, more.Spread, more.Feel, more.PilotBend, more.DirtBy));
        Assert.Same(all, Rehearsal.WithErrorOf(binding, "another", 3).Setup.Gauges.Single());
    }

    // Bias 3, spread 4, feel 12 and a step of 0.6 root 12: root(9 + 16 + 144 + 0.36) = 13.013838.
    [Fact]
    public void A_readings_uncertainty_is_the_root_of_the_sum_of_squares()
    {
        Quantity step = new((decimal)(0.6 * Math.Sqrt(12)), Units.Millimetre);
        Gauge gauge = Demo.Setup.Gauges[0].Gauge with { Resolution = step };

        Assert.Equal(13.013838, new GaugeCharacter(gauge, 3, 4, 12, 0, 0, 0).Standard(), 1e-6);
    }

    [Fact]
    public void A_setting_is_changed_and_nothing_else()
    {
        string name = Plan.Procedure.Settings.Keys.First(k => Plan.Procedure.Settings[k].Value.Unit == Units.Inch);
        Quantity other = new(0.123m, Units.Inch);
        Plan changed = Rehearsal.WithSetting(Demo.Binding, name, other).Plan;

        Assert.Equal(other, changed.Procedure.Settings[name].Value);
        Assert.All(
            Plan.Procedure.Settings.Where(s => s.Key != name),
            s => Assert.Equal(s.Value, changed.Procedure.Settings[s.Key])
        );
    }

    private static Held Value(double read, double truth, double? low, double? high, double standard) =>
        new(0, At.Head, "", read, truth, low, high, standard, false, false, false);

    private static HeadOutcome Head(
        HeadEnd end = HeadEnd.Released,
        string why = "",
        (At, string)[]? refusals = null,
        CutEnd[]? cuts = null,
        Held[]? values = null
    ) =>
        new(
            end,
            why,
            10,
            refusals ?? [],
            cuts ?? [],
            [],
            new ReadingCount[Plan.Procedure.Characteristics.Count],
            values ?? []
        );
}
