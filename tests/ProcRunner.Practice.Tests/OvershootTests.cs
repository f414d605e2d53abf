using MathNet.Numerics.Distributions;
using ProcRunner.Lessons;
using ProcRunner.Practice.Rehearsals;
using ProcRunner.Quantities;

namespace ProcRunner.Practice.Tests;

/// <summary>
/// The share of cuts that go too deep against its closed form. The operator stops short of the aim and ends the cut there, so
/// the depth comes to aim less allowance, less the error of the reading at touch-off, plus the error of the spindle: normal, with
/// the root of the sum of their squares. Steps of readout and gauge are a hundredth of that, so rounding adds nothing.
/// </summary>
public class OvershootTests
{
    private const int Heads = 400;
    private const double Reading = 0.0004;
    private const double Spindle = 0.0003;

    // Phi(-1), Phi(-0.5), Phi(0) and Phi(1) of the normal law (tables; MathNet.Numerics says the same); up to 1,600 cuts, within
    // four standard deviations of a binomial share.
    [Theory]
    [InlineData(0.0005, 0.158655)]
    [InlineData(0.00025, 0.308538)]
    [InlineData(0.0, 0.5)]
    [InlineData(-0.0005, 0.841345)]
    public void Cuts_go_too_deep_as_often_as_the_normal_law_says(double room, double expected)
    {
        double deviation = Math.Sqrt((Reading * Reading) + (Spindle * Spindle));
        Assert.Equal(expected, Normal.CDF(0, 1, -room / deviation), 1e-6);
        Tally tally = Rehearsal.Run(Bind(room), 99, Heads, 2, _ => { });

        // A head that is given up after a cut too deep gets no more cuts: the share of all cuts stays what it is for one (Wald).
        Assert.InRange(tally.Cuts, Heads, Heads * 4);
        double share = (double)tally.CutsOver / tally.Cuts;
        Assert.Equal(expected, share, 4 * Math.Sqrt(expected * (1 - expected) / tally.Cuts));
    }

    // The operator as it is when a setup says nothing: each cut goes to the aim, is measured, and goes on by what is still missing until a
    // reading is at the aim. With readings that err by e1, e2, ... and a spindle that doesn't, the depths are aim - e1, aim - e2 and
    // so on, as long as each error is below the one before; it ends at the first that isn't. Errors alike and independent stand
    // in falling order above e with n - 1 of them as often as S^(n-1) / (n-1)!, S the share above e; so the last has the density
    // f S exp(S) (a reading out of limits is given up, not taken again), and a cut goes deeper than x past the aim as often as the integral of S exp(S) from S = Phi(x / s) to 1:
    // (1 - Phi(x / s)) exp(Phi(x / s)).
    [Theory]
    [InlineData(0.0008, 0.060451)]
    [InlineData(0.0004, 0.367998)]
    [InlineData(0.0002, 0.616035)]
    [InlineData(0.0, 0.824361)]
    public void Cuts_worked_to_the_aim_go_too_deep_as_often_as_the_normal_law_says(double room, double expected)
    {
        double inside = Normal.CDF(0, 1, room / Reading);
        Assert.Equal(expected, (1 - inside) * Math.Exp(inside), 1e-5);
        Bindings.Binding binding = Bind(room, aim: 0.055m, ways: "scrap");
        Dictionary<string, Quantity> tools = new(binding.Setup.Tools) { ["spindle"] = None };
        binding = binding.With(binding.Setup with { EndsCutsInWindow = false, Tools = tools });
        Tally tally = Rehearsal.Run(binding, 1947, Heads, 2, _ => { });

        Assert.InRange(tally.Cuts, Heads, Heads * 4);
        double share = (double)tally.CutsOver / tally.Cuts;
        Assert.Equal(expected, share, 4 * Math.Sqrt(expected * (1 - expected) / tally.Cuts));
    }

    // The operator that comes with the program, with all that errs at random in its cuts: the reading at touch-off (spread, feel,
    // steps of 0.0001), touching off, stopping by hand (in steps of the readout, 0.0005), the spindle. The program rounds its
    // target shallow to the readout's step; who stops a step short goes on to the target. In inches the depth lies off where the
    // cut is to stop by
    //   N(0, s) - q - r + k 0.0005,   s^2 = spread^2 + feel^2 + touch off^2 + spindle^2,
    // with q even within half a step of the gauge, r one of 0 to 0.0004 (where the depth at touch-off lies between two steps of
    // the readout: it varies by more than any of them), and k 1 as often as the hand goes half a step past or more, once those
    // that fall short are left out. The share above the room x is the mean over q, r and k of Phi((k 0.0005 - r - x - q) / s), and
    // over q that is a difference of G(z) = z Phi(z) + phi(z).
    [Theory]
    [InlineData(0.0006)]
    [InlineData(0.0002)]
    [InlineData(0.0)]
    [InlineData(-0.0003)]
    public void Cuts_of_the_operator_that_comes_with_the_program_go_too_deep_as_often_as_its_errors_say(double room)
    {
        Dictionary<string, Quantity> tools = new(Demo.Setup.Tools) { ["flex"] = None, ["edge wear"] = None };
        GaugeCharacter gauge = Demo.Setup.Gauges.Single(g => g.Gauge.Kind == "depth");
        Bindings.Binding binding = Bind(room);
        binding = binding.With(binding.Setup with { Tools = tools, Gauges = [gauge], Readout = Demo.Setup.Readout });
        Tally tally = Rehearsal.Run(binding, 2027, 2_000, 2, _ => { });
        double expected = Expected(
            room,
            Math.Sqrt(
                Square(gauge.Spread) + Square(gauge.Feel) + Square(Inches("touch off")) + Square(Inches("spindle"))
            ),
            (double)gauge.Gauge.Resolution.Value,
            Inches("stop") / (double)Demo.Setup.Readout.Step
        );

        Assert.Equal(StepOfReadout, Demo.Setup.Readout.Step);
        Assert.InRange(tally.Cuts, 2_000, 8_000);
        double share = (double)tally.CutsOver / tally.Cuts;
        Assert.Equal(expected, share, 4 * Math.Sqrt(expected * (1 - expected) / tally.Cuts));
    }

    private const decimal StepOfReadout = 0.0005m;

    private static Quantity None => new(0, Units.Inch);

    private static double Expected(double room, double deviation, double step, double stopInSteps)
    {
        double past = Normal.CDF(0, 1, -0.5 / stopInSteps);
        double one = past / (1 - past);
        double sum = 0;
        foreach ((double k, double weight) in new[] { (0.0, 1 - one), (1.0, one) })
        {
            for (int r = 0; r < 5; r++)
            {
                double middle = (k * (double)StepOfReadout) - (r * step) - room;
                double half = step / 2;
                double mean = deviation / step * (G((middle + half) / deviation) - G((middle - half) / deviation));
                sum += weight / 5 * mean;
            }
        }

        return sum;
    }

    private static double G(double z) => (z * Normal.CDF(0, 1, z)) + Normal.PDF(0, 1, z);

    private static double Square(double value) => value * value;

    private static double Inches(string tool) => Exact.Of(Demo.Setup.Tools[tool]).In(Units.Inch).ToDouble();

    // The high limit lies by the room above where the cut is stopped.
    private static Bindings.Binding Bind(double room, decimal aim = 0.060m, string ways = "measure again, scrap")
    {
        decimal high = 0.055m + (decimal)room;
        string head = $$"""
            head: small
            title: two cylinders (invented)
            revision: 1
            material: grey iron
            unit: in
            positions: {cylinders: 2, kinds: [I, E], guide-angle: 0 deg}
            limits:
              depth: {low: 0.010, aim: 0.060, high: 0.090, origin: maker}
              high end: {high: {{high}}, origin: maker}
            """;
        return SmallPlan.Bind(Steps(aim, high, ways), head, Setup);
    }

    private static string Steps(decimal aim, decimal high, string ways) =>
        $$"""
            procedure: small
            title: a cut (invented)
            revision: 1
            settings:
              aim: {is: {{aim}} in, origin: shop}
            datums:
              set-up: {of: head, is: how it stands}
              seat: {of: position, is: the cone}
            readings:
              depth: {of: position, measured-in: length, gauge: depth, rests-on: [seat], why: it matters}
            stages:
            - stage: work
              steps:
              - zero: seat
                from: depth
                window: none
                rests-on: [set-up]
              - cut: depth
                named: cut
                window: {low: "'0.010 in'", aim: "[setting.aim]", high: "'{{high}} in'", origin: shop}
                stop-short: "'0.005 in'"
                agree-within: "'0.05 in'"
                moves: [seat]
                ways-on: [{{ways}}]
              - sign: measured
              - sign: released
                signed-by: lead
            """;

    private const string Setup = """
        practice: small on small
        title: a cut (invented)
        procedure: small
        head: small
        unit: in
        readout: {unit: in, step: 0.000005}
        gauges:
          D: {kind: depth, resolution: 0.000005, uncertainty: 0.00001, spread: 0.0004}
        tools: {spindle: 0.0003 in}
        ends-cuts-in-window: yes
        readings: {depth: recession}
        works: {work / seat: touch seat, work / cut: cut seat}
        heads:
          seat angle: 45 deg
          seat depth: {is: 0.030, varies: 0.002}
        """;
}
