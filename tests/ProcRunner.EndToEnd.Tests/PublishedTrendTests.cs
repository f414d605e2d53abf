using System.Globalization;
using System.Text.Json;
using ProcRunner.Core.Tests.ShopMath.Spc;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Testing;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.EndToEnd.Tests;

/// <summary>
/// Published data written into a job's trail as readings, and read back by the built program's trend: the whole way, trail,
/// index, history, statistics, words. Each set is the readings of another characteristic of one invented head.
/// </summary>
public sealed class PublishedTrendTests : IDisposable
{
    private const int InAnEntry = 50;

    // NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2, https://www.itl.nist.gov/div898/handbook/pmc/section3/pmc322.htm
    private const string Individuals = "49.6 47.6 49.9 51.3 47.8 51.2 52.6 52.4 53.6 52.1";

    // AIAG, Measurement Systems Analysis, worked example: 10 parts, 3 appraisers, 3 trials.
    private const string Study =
        "0.29 -0.56 1.34 0.47 -0.80 0.02 0.59 -0.31 2.26 -1.36 0.41 -0.68 1.17 0.50 -0.92 -0.11 0.75 -0.20 1.99 -1.25 "
        + "0.64 -0.58 1.27 0.64 -0.84 -0.21 0.66 -0.17 2.01 -1.31 0.08 -0.47 1.19 0.01 -0.56 -0.20 0.47 -0.63 1.80 -1.68 "
        + "0.25 -1.22 0.94 1.03 -1.20 0.22 0.55 0.08 2.12 -1.62 0.07 -0.68 1.34 0.20 -1.28 0.06 0.83 -0.34 2.19 -1.50 "
        + "0.04 -1.38 0.88 0.14 -1.46 -0.29 0.02 -0.46 1.77 -1.49 -0.11 -1.13 1.09 0.20 -1.07 -0.67 0.01 -0.56 1.45 -1.77 "
        + "-0.15 -0.96 0.67 0.11 -1.45 -0.49 0.21 -0.49 1.87 -2.16";

    private readonly TempFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Readings_of_published_sets_come_out_of_the_trail_to_their_published_digits()
    {
        Write([
            ("recession", Individuals, null, null),
            ("seat width", Process(16m, 1.949358868961793m), 8m, 20m),
            ("valve length", Process(10.991m, 0.003411378020683m), 10.98m, 11.01m),
            ("stem height", NistSets.Lew, null, null),
            ("margin", NistSets.Mavro, null, null),
            ("installed height", NistSets.Michelso, null, null),
            ("spring free length", NistSets.Lottery, null, null),
            ("face runout", "10000001 10000003 10000002", null, null),
            ("stem", Waves("1000000.2", "1000000.1 1000000.3 "), null, null),
        ]);

        // e-Handbook 6.3.2.2: mean 50.81, mean moving range 1.8778, limits 55.8041 and 45.8159.
        JsonElement chart = Trend("recession").GetProperty("groups")[0];
        Assert.Equal(10, chart.GetProperty("count").GetInt32());
        Assert.Equal(50.81, Figure(chart, "mean"), 12);
        Assert.Equal(1.877777778, Figure(chart, "mean-moving-range"), 9);
        Assert.Equal(55.80408983, Figure(chart, "control-high"), 8);
        Assert.Equal(45.81591017, Figure(chart, "control-low"), 8);
        Assert.Contains(
            "control limits 45.8159 to 55.8041 in (mean moving range 1.8778",
            Words("recession"),
            StringComparison.Ordinal
        );

        // e-Handbook 6.1.6: limits 8 and 20, mean 16, s 2. Miller and Freund, p. 470: 10.98 and 11.01, mean 10.991, s 0.0035.
        JsonElement one = Kind("seat width");
        Assert.Equal(
            [1.0, 0.6667, 0.6667, 1.3333],
            Of(one, "cp", "cpk", "upper", "lower").Select(v => Math.Round(v, 4))
        );
        JsonElement two = Kind("valve length");
        Assert.Equal([1.428571429, 1.047619048], Of(two, "cp", "cpk").Select(v => Math.Round(v, 9)));

        // NIST Statistical Reference Datasets, univariate, certified values: https://www.itl.nist.gov/div898/strd/
        Certified("stem height", 200, -177.435, 277.332168044316);
        Certified("margin", 50, 2.001856, 0.000429123454003053);
        Certified("installed height", 100, 299.8524, 0.0790105478190518);
        Certified("spring free length", 218, 518.958715596330, 291.699727470969);
        Certified("face runout", 3, 10000002, 1);
        Certified("stem", 1001, 1000000.2, 0.1);
        Assert.Contains("3 readings: too few to judge", Words("face runout"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("range", "equipment", 0.2018566667)]
    [InlineData("range", "appraiser", 0.2296670291)]
    [InlineData("range", "gauge", 0.3057663457)]
    [InlineData("range", "part", 1.1045955556)]
    [InlineData("range", "total", 1.1461345469)]
    [InlineData("range", "gauge share", 26.67804984)]
    [InlineData("range", "classes", 5)]
    [InlineData("variance", "gauge", 0.3023715223)]
    [InlineData("variance", "total", 1.0852995632)]
    [InlineData("variance", "gauge share", 27.86065088)]
    [InlineData("variance", "classes", 4)]
    public void The_gauge_study_of_the_AIAG_manual_comes_out_of_the_program_to_its_digits(
        string method,
        string name,
        double published
    )
    {
        BuiltProgram.Ended work = Program([
            "work",
            "gauge-study",
            $"readings={Study}",
            "appraisers=3",
            "trials=3",
            "parts=10",
            $"method={method}",
            "--json",
        ]);
        using JsonDocument json = JsonDocument.Parse(work.Output);
        string found = json
            .RootElement.GetProperty("results")
            .EnumerateArray()
            .Single(r => r.GetProperty("name").GetString() == name)
            .GetProperty("amount")
            .GetProperty("v")
            .GetString()!;

        // Published to ten significant digits.
        Assert.Equal(published, double.Parse(found, CultureInfo.InvariantCulture), 1e-9 * published);
    }

    private void Certified(string name, int count, double mean, double deviation)
    {
        JsonElement kind = Kind(name);
        Assert.Equal(count, kind.GetProperty("count").GetInt32());
        Assert.Equal(mean, Figure(kind, "mean"), Math.Abs(mean) * 1e-14);
        Assert.Equal(deviation, Figure(kind, "standard-deviation"), deviation * 1e-14);
    }

    private JsonElement Kind(string name) =>
        Assert.Single(Trend(name).GetProperty("groups")[0].GetProperty("capability").EnumerateArray());

    private static IEnumerable<double> Of(JsonElement element, params string[] names) =>
        names.Select(name => Figure(element, name));

    private static double Figure(JsonElement element, string name) =>
        double.Parse(element.GetProperty(name).GetString()!, CultureInfo.InvariantCulture);

    private JsonElement Trend(string name)
    {
        BuiltProgram.Ended trend = Program(["trend", name, "--json", "--store", _folder["shop"]]);
        Assert.True(trend.Status == 0, trend.All);
        return JsonDocument.Parse(trend.Output).RootElement.Clone();
    }

    private string Words(string name) => Program(["trend", name, "--store", _folder["shop"]]).Output;

    private BuiltProgram.Ended Program(string[] args) => new BuiltProgram(_folder["data"]).Run("", args);

    private void Write(IEnumerable<(string Name, string Values, decimal? Low, decimal? High)> sets)
    {
        (LocalStore? store, string fault) = DemoShop.Open(_folder["shop"], "test");
        using LocalStore held = store ?? throw new InvalidOperationException(fault);
        (PlanTexts? texts, _) = DemoShop.ReadPlan();
        JobHeader header = new()
        {
            Stamp = "1001",
            ProcedureDigest = texts!.ProcedureDigest.ToString(),
            HeadDigest = texts.HeadDigest.ToString(),
            Customer = "published data",
        };
        (JobRun? run, fault) = JobRun.Begin(held, Machine.Time, texts, header, DemoShop.Operator);
        Plan plan = (run ?? throw new InvalidOperationException(fault)).State.Plan;
        foreach ((string name, string values, decimal? low, decimal? high) in sets)
        {
            int characteristic = plan.CharacteristicIndex(name);
            int taker = plan.Takers(characteristic).First(step => !plan.IsAsFound(step));
            IEnumerable<RunEvent> readings = values
                .Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries)
                .Select(text => Reading(new At(taker, 0), name, text, low, high));
            foreach (RunEvent[] some in readings.Chunk(InAnEntry))
            {
                EntryDraft draft = new("vale", [.. some.Select(e => RunEventFormat.Write(plan, e))]);
                Assert.IsType<AppendResult.Written>(held.Append(run.State.JobId, draft));
            }
        }
    }

    private static RunEvent.ReadingTaken Reading(At at, string name, string text, decimal? low, decimal? high)
    {
        static Quantity? In(decimal? amount) => amount is { } some ? new Quantity(some, Units.Inch) : null;
        Quantity value = In(decimal.Parse(text, CultureInfo.InvariantCulture))!.Value;
        return new(
            at,
            new TakenReading
            {
                Characteristic = name,
                Typed = text,
                Places = [new("", value)],
                Value = value,
                Gauge = "D1",
                Judgement = new(Verdict.In, In(low), null, In(high), low is null && high is null ? "" : "maker", ""),
                Worked = [],
            }
        );
    }

    // Twenty readings of a given mean and deviation s: ten at mean - d and ten at mean + d have s = d root(20/19).
    private static string Process(decimal mean, decimal off) =>
        string.Join(
            ' ',
            Enumerable
                .Range(0, 20)
                .Select(i => (mean + (i % 2 == 0 ? off : -off)).ToString(CultureInfo.InvariantCulture))
        );

    // One value, then 500 times two others.
    private static string Waves(string first, string two) => first + " " + string.Concat(Enumerable.Repeat(two, 500));
}
