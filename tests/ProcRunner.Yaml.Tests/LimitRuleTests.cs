using System.Globalization;
using FsCheck.Xunit;
using ProcRunner.Problems;
using ProcRunner.Procedures;

namespace ProcRunner.Yaml.Tests;

/// <summary>
/// A limit in two units must agree, a press fit must hold, a limit must stand the right way up: each for the whole kind,
/// and for pairs that were published.
/// </summary>
public sealed class LimitRuleTests
{
    private const string Limit = "high: 3.945, origin: maker}";

    // 1 in = 25.4 mm exactly (NIST SP 811 (2008), appendix B.8).
    private const decimal MillimetresPerInch = 25.4m;

    [Property(MaxTest = 400)]
    public void A_pair_in_inches_and_millimetres_passes_exactly_when_its_last_digits_allow_it(
        ushort inches,
        byte inchPlaces,
        byte millimetrePlaces,
        sbyte off
    )
    {
        decimal inHalf = 0.5m * Power(-(inchPlaces % 6));
        decimal inch = inches * Power(-(inchPlaces % 6));
        decimal step = Power(-(millimetrePlaces % 5));
        decimal near = decimal.Round(inch * MillimetresPerInch / step) * step;
        // Most steps off are small, so that both answers come up often.
        decimal millimetre = near + (off % 40 * step);
        millimetre = millimetre < 0 ? 0 * step : millimetre;
        bool overlaps =
            (inch - inHalf) * MillimetresPerInch <= millimetre + (step / 2)
            && millimetre - (step / 2) <= (inch + inHalf) * MillimetresPerInch;

        IReadOnlyList<Problem> problems = WithPair(Text(inch), Text(millimetre));

        if (overlaps)
        {
            Assert.Empty(problems);
            return;
        }

        Problem problem = Assert.Single(problems);
        Assert.Equal("PR-H03", problem.Code);
        Assert.Contains(Text(inch) + " in", problem.Text, StringComparison.Ordinal);
        Assert.Contains(Text(millimetre) + " mm", problem.Text, StringComparison.Ordinal);
    }

    // Misprints and a sound pair as they stand in U.S. Army technical manuals.
    [Theory]
    [InlineData("0.006", "0.015", false)] // TM 9-2815-255-24 prints 0.006 in as 0.015 mm; it is 0.1524 mm
    [InlineData("0.006", "0.15", true)] // the same limit, written right
    [InlineData("0.0625", "0.159", false)] // TM 5-6115-593-34 prints 1/16 in as 0.159 mm; it is 1.5875 mm
    [InlineData("0.0625", "1.59", true)]
    [InlineData("4.755", "34.755", false)] // TM 9-6115-604-34 has 34.755 where 4.755 in is meant, in its metric column
    public void Published_pairs(string inch, string millimetre, bool agrees) =>
        Assert.Equal(agrees ? [] : ["PR-H03"], WithPair(inch, millimetre).Select(problem => problem.Code));

    [Fact]
    public void The_unit_that_governs_is_the_one_used()
    {
        string text = Samples.Head.Replace(
            Limit,
            "high: 3.945, also: {high: 100.20 mm}, governs: mm, origin: maker}",
            StringComparison.Ordinal
        );
        HeadSpec head = Samples.LoadHead(text).Value!;
        Limit limit = head.LimitOf("deck thickness", null)!;
        Assert.Equal(("3.915 in", "100.20 mm"), (limit.Low.ToString(), limit.High.ToString()));
    }

    [Property(MaxTest = 300)]
    public void A_limit_that_is_upside_down_is_refused_and_no_other(ushort low, ushort high)
    {
        string lowText = Text(low * 0.0001m);
        string highText = Text(high * 0.0001m);
        string text = Samples.Head.Replace(
            "low: 3.915, aim: 3.940, high: 3.945",
            $"low: {lowText}, high: {highText}",
            StringComparison.Ordinal
        );
        IReadOnlyList<Problem> problems = Samples.LoadHead(text).Problems;
        Assert.Equal(low <= high ? [] : ["PR-H02"], problems.Select(problem => problem.Code));
        if (low > high)
        {
            Assert.Contains(lowText, problems[0].Text, StringComparison.Ordinal);
            Assert.Contains(highText, problems[0].Text, StringComparison.Ordinal);
        }
    }

    [Property(MaxTest = 300)]
    public void A_fit_whose_smallest_interference_is_not_above_zero_is_refused_and_no_other(
        byte outside,
        byte outsideWidth,
        byte hole,
        byte holeWidth
    )
    {
        decimal outsideLow = 0.6200m + (outside * 0.0001m);
        decimal outsideHigh = outsideLow + (outsideWidth * 0.0001m);
        decimal holeLow = 0.6200m + (hole * 0.0001m);
        decimal holeHigh = holeLow + (holeWidth * 0.0001m);
        string fit = Fit(Text(outsideLow), Text(outsideHigh), Text(holeLow), Text(holeHigh), null);

        Loaded<HeadSpec> head = WithFit(fit);

        if (outsideLow - holeHigh > 0)
        {
            Assert.Empty(head.Problems);
            Limit limit = head.Value!.LimitOf("guide in head", null)!;
            Assert.Equal(outsideLow - holeHigh, limit.Low!.Value.Value);
            Assert.Equal(outsideHigh - holeLow, limit.High!.Value.Value);
            return;
        }

        Assert.Equal("PR-H05", Assert.Single(head.Problems).Code);
    }

    // Guide-to-head interference as vehicle service pages print it, outside, hole and interference in mm. Three agree with
    // their own limits; the last prints 0.027 to 0.059 where its limits give 0.045 to 0.074. The inch row: TM 9-6115-604-34.
    [Theory]
    [InlineData("11.023 mm", "11.034 mm", "10.975 mm", "10.996 mm", "0.027 mm", "0.059 mm", true)]
    [InlineData("9.523 mm", "9.534 mm", "9.475 mm", "9.496 mm", "0.027 mm", "0.059 mm", true)]
    [InlineData("10.023 mm", "10.034 mm", "9.975 mm", "9.996 mm", "0.027 mm", "0.059 mm", true)]
    [InlineData("10.023 mm", "10.034 mm", "9.960 mm", "9.978 mm", "0.027 mm", "0.059 mm", false)]
    [InlineData("10.023 mm", "10.034 mm", "9.960 mm", "9.978 mm", "0.045 mm", "0.074 mm", true)]
    [InlineData("0.8456", "0.8461", "0.8435", "0.8445", "0.0011", "0.0026", true)]
    public void Published_fits(
        string low,
        string high,
        string holeLow,
        string holeHigh,
        string least,
        string most,
        bool agrees
    )
    {
        IReadOnlyList<Problem> problems = WithFit(Fit(low, high, holeLow, holeHigh, (least, most))).Problems;
        Assert.Equal(agrees ? [] : ["PR-H06"], problems.Select(problem => problem.Code));
        if (!agrees)
        {
            Assert.Contains("0.027 mm to 0.059 mm", problems[0].Text, StringComparison.Ordinal);
            Assert.Contains("0.045 mm to 0.074 mm", problems[0].Text, StringComparison.Ordinal);
        }
    }

    private static IReadOnlyList<Problem> WithPair(string inch, string millimetre) =>
        Samples
            .LoadHead(
                Samples
                    .Head.Replace("low: 3.915, aim: 3.940, high: 3.945", $"high: {inch}", StringComparison.Ordinal)
                    .Replace(
                        $"high: {inch}, origin",
                        $"high: {inch}, also: {{high: {millimetre} mm}}, origin",
                        StringComparison.Ordinal
                    )
            )
            .Problems;

    private static Loaded<HeadSpec> WithFit(string fit) =>
        Samples.LoadHead(
            Samples.Head.Replace(
                "{outside: {low: 0.6265, high: 0.6270}, hole: {low: 0.6245, high: 0.6250}, origin: maker}",
                fit,
                StringComparison.Ordinal
            )
        );

    private static string Fit(
        string low,
        string high,
        string holeLow,
        string holeHigh,
        (string Least, string Most)? stated
    )
    {
        string said = stated is { } range ? $"interference: {{low: {range.Least}, high: {range.Most}}}, " : "";
        return $"{{outside: {{low: {low}, high: {high}}}, hole: {{low: {holeLow}, high: {holeHigh}}}, {said}origin: maker}}";
    }

    private static decimal Power(int exponent) => new(1, 0, 0, false, (byte)-exponent);

    private static string Text(decimal value) => value.ToString(CultureInfo.InvariantCulture);
}
