using ProcRunner.Practice.Operators;
using ProcRunner.Practice.Rehearsals;

namespace ProcRunner.Practice.Tests;

/// <summary>
/// How many released values are to be expected out of limits (JCGM 106:2012, 7.4), against how many are. That chance takes
/// nothing for known but the reading, so heads come in here spread ten times as wide as the gauge errs and nothing is done to
/// them: what is read out of limits is given up, what is read within them is released, and of that the truth is known.
/// </summary>
public class ConformanceTests
{
    private const int Heads = 8_000;

    private const string Readings = """
          margin: {of: position, measured-in: length, gauge: caliper, why: it holds}
          guide bore: {of: position, measured-in: length, places: [top along, middle along, bottom along], gauge: bore, why: it guides}
          stem: {of: position, measured-in: length, places: [middle along], gauge: micrometer, why: it runs}
          spring load closed: {of: position, measured-in: lbf, gauge: tester, why: it closes}
          spring load open: {of: position, measured-in: lbf, gauge: tester, why: it closes}
          installed height: {of: position, measured-in: length, gauge: caliper, why: it closes}
        """;

    // One reading of a deviation of 0.02; the difference of two of 0.003 and 0.004; how far three places of one, 0.003 each, lie
    // apart; a load that hangs on two loads of 0.3 lbf and a height of 0.02 mm; that load with the valve open, which is the open load
    // alone when the spring stands at its test height.
    [Theory]
    [InlineData("margin", OneReading)]
    [InlineData("least clearance", Difference)]
    [InlineData("taper along", Spread)]
    [InlineData("seat load", Load)]
    [InlineData("open load", OpenLoad)]
    public void As_many_are_out_as_the_readings_let_expect(string value, string steps)
    {
        Bindings.Binding binding = Bind(value, steps);
        Tally tally = Rehearsal.Run(binding, 11, Heads, 2, _ => { });

        Assert.InRange(tally.Released, Heads / 10, Heads);
        Assert.Empty(tally.Stuck);
        Assert.True(tally.Unexplained == 0, string.Join('\n', tally.Escapes.Where(e => e.Value.IsUnexplained)));
        Assert.InRange(tally.Escaped, 100, Heads);
        // Each comes by a chance p of its own: the deviation of their number is the root of the sum of p (1 - p), below that of p.
        Assert.Equal(tally.Expected, tally.Escaped, 4 * Math.Sqrt(tally.Expected));
    }

    // A procedure that measures the margin and has the valve refaced afterwards, 0.05 square to a face of 45 degrees: 0.0707 less, three
    // and a half deviations of its reading, and nothing asks again. Who was near the low limit is under it now, and no gauge
    // explains that, though a reading may well be as far off.
    [Fact]
    public void What_changes_after_it_was_measured_is_no_gauges_fault()
    {
        Bindings.Binding binding = Bind("margin", OneReading + "\n  - do: reface", "work / reface: reface valve");
        Tally tally = Rehearsal.Run(binding, 11, 200, 2, _ => { });
        string[] lines = [.. RehearsalLines.Of(new RehearsalResult(binding, 11, tally, [], null, []))];

        Assert.InRange(tally.Escaped, 15, tally.Released - 5);
        Assert.Equal(tally.Escaped, tally.Unexplained);
        Assert.Equal(
            Math.Min(12, tally.Escaped),
            lines.Count(l => l.Contains("NOT EXPLAINED", StringComparison.Ordinal))
        );
    }

    // Where heads come in evenly over the limit, as many are refused in limits as are passed out of them; what was passed is released.
    [Theory]
    [InlineData("margin", OneReading)]
    [InlineData("least clearance", Difference)]
    public void Verdicts_are_turned_both_ways_alike(string value, string steps)
    {
        Bindings.Binding binding = Bind(value, steps);
        Assert.True(binding.Plan.TryCharacteristic(value, out int index));
        Tally tally = Rehearsal.Run(binding, 12, 4_000, 2, _ => { });
        ReadingCount count = tally.Readings[index];

        Assert.Equal(4_000, count.Judged);
        Assert.Equal(tally.Released, count.Judged - count.Refused);
        Assert.Equal(tally.Escaped, count.PassedOut);
        Assert.Equal(count.PassedOut, count.RefusedInLimits, 4 * Math.Sqrt(count.Wrong));
    }

    // By hand (JCGM 100:2008, 5.1.2), with d / root 12 for a step d (4.3.7). Caliper: root(0.012^2 + 0.016^2 + 0.002^2 / 12) = 0.020008;
    // bore 0.0030139, micrometer 0.0040104, their difference root of the sum of squares 0.0050166; of three places the farthest two
    // count, 0.0030139 root 2. A spring of 50 and 100 lbf, 6.25 lbf a mm, at its test height: 0.30139 lbf and 6.25 of 0.020008 mm,
    // 0.32629 lbf; open, the open load alone and the height, the same, for the closed load counts once as it is and once less in the
    // rate. 4448.2216 mN a lbf (NIST SP 811 (2008), App. B.8).
    [Theory]
    [InlineData("margin", OneReading, 0.020008, 1e-6)]
    [InlineData("least clearance", Difference, 0.0050166, 1e-7)]
    [InlineData("taper along", Spread, 0.0042623, 1e-7)]
    [InlineData("seat load", Load, 0.32629 * 4448.2216, 20)]
    [InlineData("open load", OpenLoad, 0.32629 * 4448.2216, 20)]
    public void A_values_uncertainty_follows_from_its_readings(
        string value,
        string steps,
        double expected,
        double within
    )
    {
        Bindings.Binding binding = Bind(value, steps);
        HeadOutcome[] released =
        [
            .. Enumerable
                .Range(0, 40)
                .Select(n => ModelOperator.Play(binding, PracticeShop.Of(binding.Setup), 5, (ulong)n))
                .Where(h => h.End == HeadEnd.Released),
        ];

        Assert.NotEmpty(released);
        Assert.Equal(expected, released.Average(h => h.Values.Single().Standard), within);
    }

    // A gauge that is used without being zeroed now and then lets more through than its uncertainty says; each of them is explained by
    // that, and the report says that they are more.
    [Fact]
    public void Slips_let_more_through_and_the_report_says_so()
    {
        Bindings.Binding binding = Bind("margin", OneReading);
        Bindings.Binding slipping = binding.With(
            binding.Setup with
            {
                Gauges = [.. binding.Setup.Gauges.Select(g => g with { NotZeroed = 0.3, NotZeroedBy = 0.08 })],
            }
        );
        RehearsalResult honest = RehearsalResult.Of(binding, 11, 2_000, 0, 2, (_, _, _) => { }, default);
        RehearsalResult result = RehearsalResult.Of(slipping, 11, 2_000, 0, 2, (_, _, _) => { }, default);

        Assert.True(result.Tally.Escaped > 2 * result.Tally.Expected);
        Assert.Equal(0, result.Tally.Unexplained);
        Assert.Contains("MORE ARE OUT", string.Join(' ', RehearsalLines.Of(result)), StringComparison.Ordinal);
        Assert.DoesNotContain("MORE ARE OUT", string.Join(' ', RehearsalLines.Of(honest)), StringComparison.Ordinal);
    }

    private const string OneReading = """
          - measure: margin
            window: {low: "'0.90 mm'", high: "'1.10 mm'", origin: shop}
            ways-on: [scrap]
        """;

    private const string Difference = """
          - measure: stem
            window: none
          - measure: guide bore
            window: none
            works-out:
              least clearance:
                is: "[guide bore.middle along] - [stem.middle along]"
                window: {low: "'0.03 mm'", high: "'0.08 mm'", origin: shop}
            ways-on: [scrap]
        """;

    private const string Spread = """
          - measure: guide bore
            window: none
            works-out:
              taper along:
                is: "spread([guide bore.top along], [guide bore.middle along], [guide bore.bottom along])"
                window: {high: "'0.05 mm'", origin: shop}
            ways-on: [scrap]
        """;

    private const string Load =
        Springs
        + """

                  seat load:
                    is: "[spring load closed] + [spring rate] * ('40 mm' - [installed height])"
                    window: {low: "'47 lbf'", high: "'53 lbf'", origin: shop}
                ways-on: [scrap]
            """;

    private const string OpenLoad =
        Springs
        + """

                  open load:
                    is: "[spring load closed] + [spring rate] * ('48 mm' - [installed height])"
                    window: {low: "'97 lbf'", high: "'103 lbf'", origin: shop}
                ways-on: [scrap]
            """;

    private const string Springs = """
          - measure: spring load closed
            window: none
          - measure: spring load open
            window: none
            works-out:
              spring rate: {is: "([spring load open] - [spring load closed]) / '8 mm'", window: none}
          - measure: installed height
            window: none
            works-out:
        """;

    private static readonly (string Reading, string Kind, string Gauge)[] Gauges =
    [
        ("margin", "caliper", "{kind: caliper, resolution: 0.002, uncertainty: 0.001, spread: 0.012, feel: 0.016}"),
        (
            "installed height",
            "caliper",
            "{kind: caliper, resolution: 0.002, uncertainty: 0.001, spread: 0.012, feel: 0.016}"
        ),
        ("guide bore", "bore", "{kind: bore, resolution: 0.001, uncertainty: 0.0005, spread: 0.003}"),
        ("stem", "micrometer", "{kind: micrometer, resolution: 0.001, uncertainty: 0.0005, spread: 0.004}"),
        ("spring load closed", "tester", "{kind: tester, resolution: 0.1 lbf, uncertainty: 0.05 lbf, spread: 0.3 lbf}"),
    ];

    private static Bindings.Binding Bind(string value, string steps, string work = "")
    {
        IEnumerable<string> gauges = Gauges
            .Where(g => steps.Contains($"measure: {g.Reading}", StringComparison.Ordinal))
            .Select(g => $"  {g.Kind[..1].ToUpperInvariant()}: {g.Gauge}");
        IEnumerable<string> bound = Gauges.Select(g => g.Reading).Append("spring load open").Append(value).Distinct();
        return SmallPlan.Bind(
            $$"""
            procedure: small
            title: readings (invented)
            revision: 1
            readings:
            {{Readings}}
            stages:
            - stage: work
              steps:
            {{steps}}
              - sign: measured
              - sign: released
                signed-by: lead
            """,
            """
            head: small
            title: one cylinder (invented)
            revision: 1
            material: grey iron
            unit: mm
            positions: {cylinders: 1, kinds: [I], guide-angle: 0 deg}
            """,
            $$"""
            practice: small on small
            title: readings (invented)
            procedure: small
            head: small
            unit: mm
            readout: {unit: mm, step: 0.01}
            gauges:
            {{string.Join('\n', gauges)}}
            readings:
            {{string.Join('\n', bound.Select(b => $"  {b}: {b}"))}}
            {{(work.Length > 0 ? $"works: {{{work}}}\ntools: {{least reface: 0.05 mm, reface angle: 45 deg}}" : "")}}
            heads:
              margin: {is: 1, varies: 0.2}
              stem: {is: 7.95, varies: 0.03}
              guide bore: {is: 8.00, {{(value == "taper along" ? "each-varies: 0.03" : "varies: 0.04")}}}
              spring load closed: {is: 50 lbf, varies: 3 lbf}
              spring load open: {is: 100 lbf, varies: 3 lbf}
              spring test closed: 40
              spring test open: 32
              valve lift: 8
              valve length: {is: 120, varies: 0.2}
              spring pocket: 80
            """
        );
    }
}
