using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;
using ProcRunner.Quantities;
using ProcRunner.Records.History;
using ProcRunner.Records.Story;

namespace ProcRunner.Records.Tests;

/// <summary>
/// Every number that a reader meets is looked for in the trail's own bytes: what was typed, judged, worked out and signed there,
/// the texts it pins, or the shop book. What the record works out itself is worked out a second time here.
/// </summary>
public partial class TraceTests
{
    public static TheoryData<string> Jobs => ["demo", "conceded", "practice", "back"];

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Every_value_stands_in_the_entry_that_it_names(string job)
    {
        (BuildRecord record, Dictionary<long, string> entries) = Read(job);

        Assert.NotEmpty(record.Values);
        Assert.All(
            record.Values,
            value =>
            {
                string entry = entries[value.By.Entry];
                Assert.Contains($"\"{value.Record.Value}\"", entry, StringComparison.Ordinal);
                Assert.Contains($"\"of\":\"{value.Name}\"", entry, StringComparison.Ordinal);
                foreach (
                    Quantity? limit in new[]
                    {
                        value.Record.Judgement.Low,
                        value.Record.Judgement.Aim,
                        value.Record.Judgement.High,
                    }
                )
                {
                    Assert.True(
                        limit is null || entry.Contains($"\"{limit}\"", StringComparison.Ordinal),
                        $"{value.Name} {limit}"
                    );
                }

                Assert.All(
                    value.Record.Places,
                    p => Assert.Contains($"\"{p.Value}\"", entry, StringComparison.Ordinal)
                );
                if (value.Record.AsFound is { } found)
                {
                    Assert.Contains(
                        entries.Where(e => e.Key <= value.By.Entry),
                        e =>
                            e.Value.Contains($"\"{found}\"", StringComparison.Ordinal)
                            && e.Value.Contains("\"step\":\"teardown / ", StringComparison.Ordinal)
                    );
                }
            }
        );
    }

    // By hand for the demo's deck (procedures/demo/README.md): 3.9260 - 3.915 = 0.0110 above the least thickness;
    // 0.030 - 0.005 - 0.009 - 0.005 = 0.011 of the budget.
    [Fact]
    public void What_is_left_is_the_first_number_less_the_others()
    {
        Assert.All(
            Worked.Demo.Record.Left.Concat(Worked.Conceded.Record.Left),
            left =>
            {
                Assert.All(left.Terms, t => Assert.Equal(left.Left.Unit, t.Unit));
                Assert.Equal(left.Terms[0].Value - left.Terms.Skip(1).Sum(t => t.Value), left.Left.Value);
            }
        );
        Assert.Equal(0.0110m, Left("deck thickness").Left.Value);
        Assert.Equal(0.011m, Left("head and block together").Left.Value);
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Every_number_on_the_page_stands_in_the_trail_or_is_accounted_for(string job)
    {
        (BuildRecord record, _) = Read(job);
        Worked worked = Worked.All.Single(j => j.Name == job).Job;
        HashSet<string> known =
        [
            .. Numbers(worked.Trail),
            .. Numbers(worked.EarlierTrail),
            .. worked.Texts.SelectMany(Numbers),
            .. Accounted(record),
        ];

        string[] unknown = [.. Numbers(Text(worked.Text(".html"))).Where(n => !known.Contains(n)).Distinct()];

        Assert.True(Numbers(Text(worked.Text(".html"))).Count() > 100);
        Assert.Empty(unknown);
    }

    // Without this the test above could pass by knowing everything.
    [Fact]
    public void A_number_that_stands_nowhere_is_found()
    {
        Worked worked = Worked.Demo;
        HashSet<string> known =
        [
            .. Numbers(worked.Trail),
            .. worked.Texts.SelectMany(Numbers),
            .. Accounted(worked.Record),
        ];

        Assert.DoesNotContain("0.0683", known);
        Assert.DoesNotContain("3.9273", known);
        Assert.DoesNotContain("23.5", known);
    }

    private static Reckoning Left(string what) => Worked.Demo.Record.Left.Single(l => l.What == what);

    private static (BuildRecord Record, Dictionary<long, string> Entries) Read(string job)
    {
        Worked worked = Worked.All.Single(j => j.Name == job).Job;
        string[] lines = worked.Trail.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        return (worked.Record, lines.Select((line, i) => ((long)i + 1, line)).ToDictionary());
    }

    // What the record adds: reckonings, counts of things listed, dates and times, names of standards, digests, gauges.
    private static IEnumerable<string> Accounted(BuildRecord record)
    {
        int[] counts =
        [
            record.Values.Count(v =>
                v.Standing is ValueStanding.In or ValueStanding.Out or ValueStanding.Conceded or ValueStanding.Short
            ),
            record.Values.Count(v => v.Standing == ValueStanding.In),
            record.Values.Count(v => v.Standing == ValueStanding.Recheck),
            record.Cases.Count(c => c.End == CaseEnd.Settled),
            record.Cases.Count(c => c is { End: CaseEnd.Conceded, IsCurrent: true }),
            .. Enumerable.Range(1, record.Cases.Count),
            .. record.Gauges.Select(g => g.Readings),
            .. record.Plan.Positions.Select(p => p.Cylinder),
            .. Enumerable.Range(1, (int)record.Last.Entry),
        ];
        IEnumerable<string> texts =
        [
            .. record.Left.Select(l => l.Left.ToString()),
            .. (record.Comeback?.Rows ?? []).SelectMany(Since),
            .. (record.Comeback?.Nearest.Take(1) ?? []).Select(n => n.Left.ToString()),
            .. record.Gauges.Select(g => $"{g.Gauge!.Id} {g.Gauge.Name} {g.Gauge.Resolution} {g.Gauge.Uncertainty}"),
            .. record.Gauges.Select(g => $"{g.Gauge!.CalibratedUntil:yyyy-MM-dd}"),
            .. record.Values.Select(v => FromTheNewFace(record, v)),
            record.Plan.Procedure.Revised is { } revised ? $"{revised.On:yyyy-MM-dd}" : "",
            .. record.Plan.Positions.Select(p => p.Name),
            .. record.Values.Select(v => v.By.Time),
            .. record.Stages.SelectMany(s => new[] { s.First.Time, s.Last.Time }),
            .. record.Marks.Select(m => m.By.Time),
            record.Opened.Time,
            record.Last.Time,
            record.Opened.At.ToString("zzz", CultureInfo.InvariantCulture),
            record.Proof.Code?.ToString() ?? "",
            record.Proof.LastDigest.ToString(),
            record.Proof.RootFingerprint,
            record.JobId,
            "SHA-256",
            "k = 2",
        ];
        return counts.Select(c => c.ToString(CultureInfo.InvariantCulture)).Concat(texts.SelectMany(Numbers));
    }

    // Worked out a second time: depth' = depth - cut, of what was measured from the deck before it was cut; never below 0.
    private static string FromTheNewFace(BuildRecord record, FinalValue value) =>
        value.Name is "counterbore depth" or "insert set-back" && record.Find("skim taken", "head") is { } skim
            ? Math.Max(0, value.Record.Value.Value - skim.Record.Value.Value).ToString(CultureInfo.InvariantCulture)
            : "";

    // Worked out a second time, in doubles: the change, and its part of what was left to the limit it went towards.
    private static IEnumerable<string> Since(Comeback.Row row)
    {
        if (row.Found is not { } found || found.Unit != row.Built.Unit)
        {
            return [];
        }

        decimal change = found.Value - row.Built.Value;
        Quantity? limit = change > 0 ? row.Limits.High : row.Limits.Low;
        double left = limit is { } end && end.Unit == found.Unit ? (double)(end.Value - row.Built.Value) : 0;
        string used =
            change != 0 && left != 0
                ? Math.Round(100 * (double)change / left).ToString(CultureInfo.InvariantCulture)
                : "";
        return [Math.Abs(change).ToString(CultureInfo.InvariantCulture), used, "999", "100"];
    }

    private static IEnumerable<string> Numbers(string text) => Number().Matches(text).Select(m => m.Value);

    private static string Text(string html)
    {
        using StringReader text = new(html);
        using XmlReader reader = XmlReader.Create(text, new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore });
        XDocument page = XDocument.Load(reader);
        page.Descendants("style").Remove();
        return string.Join(' ', page.DescendantNodes().OfType<XText>().Select(t => t.Value));
    }

    [GeneratedRegex("[0-9]+([.][0-9]+)?", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Number();
}
