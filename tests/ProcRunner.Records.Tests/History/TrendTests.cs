using ProcRunner.Quantities;
using ProcRunner.Records.History;

namespace ProcRunner.Records.Tests.History;

/// <summary>Published charts and capabilities, through the shop's history.</summary>
public sealed class TrendTests
{
    private static readonly DateTimeOffset Start = new(2031, 4, 7, 8, 0, 0, TimeSpan.Zero);

    // NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2, https://www.itl.nist.gov/div898/handbook/pmc/section3/pmc322.htm
    private static readonly string[] Nist =
    [
        "49.6",
        "47.6",
        "49.9",
        "51.3",
        "47.8",
        "51.2",
        "52.6",
        "52.4",
        "53.6",
        "52.1",
    ];

    [Fact]
    public void The_individuals_chart_of_the_e_Handbook_comes_out_to_its_digits()
    {
        Trend trend = Trend.Of(Nist.Select((text, day) => Reading(text, day)));
        TrendGroup all = Assert.Single(trend.Groups);

        // Same page: mean 50.81, mean moving range 1.8778, upper limit 55.8041, lower limit 45.8159.
        Assert.Equal(50.81, all.Limits!.Mean, 10);
        Assert.Equal(1.8778, all.Limits.MeanRange, 4);
        Assert.Equal(55.8041, all.Limits.High, 4);
        Assert.Equal(45.8159, all.Limits.Low, 4);
        string words = Words(trend);
        Assert.Contains(
            "mean 50.8100; control limits 45.8159 to 55.8041 (mean moving range 1.8778, its limit 6.1347)",
            words,
            StringComparison.Ordinal
        );
        Assert.Contains("no reading outside the control limits", words, StringComparison.Ordinal);
    }

    [Fact]
    public void The_capability_of_the_e_Handbook_comes_out_to_its_digits()
    {
        // e-Handbook 6.1.6: limits 8 and 20, mean 16, s 2: Cp 1.0, Cpk 0.6667. Twenty readings of mean 16 and s 2 stand for
        // its process: ten at 16 - d and ten at 16 + d have s = d root(20/19), so d is 2 root(19/20), in quadruple length.
        const decimal off = 1.949358868961793m;
        Trend trend = Trend.Of(
            Enumerable
                .Range(0, 20)
                .Select(i =>
                    Reading(
                        (16 + (i % 2 == 0 ? off : -off)).ToString(System.Globalization.CultureInfo.InvariantCulture),
                        i,
                        low: "8",
                        high: "20"
                    )
                )
        );
        KindCapability kind = Assert.Single(Assert.Single(trend.Groups).Capabilities);

        Assert.Equal(2.0, kind.Deviation, 10);
        Assert.Equal(1.0, kind.Capability!.Cp!.Value, 10);
        Assert.Equal(0.6667, kind.Capability.Cpk, 4);
        Assert.Equal(0.6667, kind.Capability.Upper!.Value, 4);
        Assert.Equal(1.3333, kind.Capability.Lower!.Value, 4);
        Assert.Contains("Cp 1.00, Cpk 0.67", Words(trend), StringComparison.Ordinal);
    }

    [Fact]
    public void Runout_has_one_limit_and_one_side()
    {
        Trend trend = Trend.Of(
            Enumerable.Range(0, 20).Select(i => Reading(i % 2 == 0 ? "0.0010 in" : "0.0014 in", i, high: "0.0020 in"))
        );
        KindCapability kind = Assert.Single(trend.Groups[0].Capabilities);

        // By hand: mean 0.0012, s = 0.0002 root(20/19); (0.0020 - 0.0012) / 3 s.
        Assert.Null(kind.Capability!.Cp);
        Assert.Null(kind.Capability.Lower);
        Assert.Equal(0.0008 / (3 * 0.0002 * Math.Sqrt(20.0 / 19)), kind.Capability.Cpk, 10);
        Assert.Contains("(one limit)", Words(trend), StringComparison.Ordinal);
    }

    [Fact]
    public void Too_few_readings_are_said_to_be_too_few()
    {
        Trend trend = Trend.Of(Nist.Take(7).Select((text, day) => Reading(text, day)));

        Assert.Null(trend.Groups[0].Limits);
        Assert.Contains("7 readings: too few to judge", Words(trend), StringComparison.Ordinal);
        Assert.DoesNotContain("control limits 4", Words(trend), StringComparison.Ordinal);
    }

    [Fact]
    public void Kinds_of_positions_with_other_aims_are_charted_by_their_deviation_and_judged_apart()
    {
        TrendReading[] readings =
        [
            .. Enumerable
                .Range(0, 12)
                .Select(i => Reading("0.0560 in", i, "0.0490 in", "0.0550 in", "0.0610 in", kind: "I")),
            .. Enumerable
                .Range(0, 12)
                .Select(i => Reading("0.0570 in", i + 12, "0.0520 in", "0.0580 in", "0.0640 in", kind: "E")),
        ];
        Trend trend = Trend.Of(readings);

        Assert.True(trend.IsFromAim);
        Assert.Equal(["E", "I"], trend.Groups[0].Capabilities.Select(c => c.Kind));
        Assert.Equal(-0.001, trend.Groups[0].Capabilities[0].Mean, 12);
        Assert.Equal(0.001, trend.Groups[0].Capabilities[1].Mean, 12);
        Assert.Equal(-0.006, trend.Groups[0].Capabilities[1].Low!.Value, 12);
    }

    [Fact]
    public void Millimetres_and_inches_are_one_history()
    {
        Trend trend = Trend.Of([
            Reading("1.0 in", 0),
            Reading("1.0 in", 1),
            Reading("25.4 mm", 2),
            Reading("3 lbf", 3),
        ]);

        Assert.Equal(Units.Inch, trend.Unit);
        Assert.Equal([1.0, 1.0, 1.0], trend.Groups[0].Values);
        Assert.Equal(1, trend.LeftOut);
    }

    [Fact]
    public void The_last_reading_out_of_spec_is_named_and_each_person_stands_for_themselves()
    {
        TrendReading[] readings =
        [
            Reading("49.6", 0) with
            {
                Person = "vale",
            },
            Reading("47.6", 1) with
            {
                Person = "finch",
                IsOut = true,
                Stamp = "1044",
                Position = "3E",
                Gauge = "D1",
            },
            Reading("49.9", 2) with
            {
                Person = "vale",
            },
        ];

        Assert.Contains(
            "last out of spec: 47.6, 2031-04-08 on 1044 at 3E, finch, gauge D1",
            Words(Trend.Of(readings)),
            StringComparison.Ordinal
        );
        Trend by = Trend.Of(readings, TrendBy.Person);
        Assert.Equal(["finch", "vale"], by.Groups.Select(g => g.Name));
        Assert.Equal([1, 2], by.Groups.Select(g => g.Readings.Count));
    }

    [Fact]
    public void The_chart_marks_each_reading_and_its_limits_and_keeps_to_its_width()
    {
        Trend trend = Trend.Of(
            Enumerable
                .Range(0, 200)
                .Select(i => Reading(i == 190 ? "9" : "5", i, "2", null, "8") with { IsOut = i == 190 })
        );
        IReadOnlyList<string> chart = RunChart.Draw(
            trend,
            trend.Groups[0],
            78,
            13,
            v => v.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture)
        );

        Assert.Equal(13, chart.Count);
        Assert.All(chart, row => Assert.True(row.Length <= 78, row));
        Assert.Equal(1, chart.Sum(row => row.Count(c => c == 'X')));
        Assert.Contains(chart, row => row.Contains("-----", StringComparison.Ordinal));
    }

    private static string Words(Trend trend) => string.Join('\n', new TrendWords(trend).Lines(78, "", name => name));

    private static TrendReading Reading(
        string value,
        int day,
        string? low = null,
        string? aim = null,
        string? high = null,
        string kind = ""
    ) => new(Start.AddDays(day), Of(value)!.Value, Of(low), Of(aim), Of(high), false) { Kind = kind };

    private static Quantity? Of(string? text) => Quantity.TryParse(text, out Quantity quantity) ? quantity : null;
}
