using FsCheck.Xunit;
using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.ShopMath;
using Referee = MathNet.Numerics;

namespace ProcRunner.Core.Tests.ShopMath.PressFits;

public class ExpansionCurveTests
{
    // A. Kaw, University of South Florida, notes on underestimating contraction for a shrink fit: temperature in degF, expansion in
    // 1e-6 per degF.
    private static readonly (double Fahrenheit, double Millionths)[] Kaw =
    [
        (80, 6.47),
        (0, 6.00),
        (-80, 5.43),
        (-100, 5.28),
        (-160, 4.72),
        (-180, 4.52),
        (-260, 3.58),
        (-280, 3.33),
        (-300, 3.07),
        (-340, 2.45),
    ];

    private static readonly ExpansionCurve Curve = Known.Value(
        ExpansionCurve.Of([.. Kaw.Select(point => (Celsius(point.Fahrenheit), point.Millionths * 1.8e-6))])
    );

    // The quadratic through the table: 6.027541740616 + 0.006238538553715 T - 1.2301075275534e-5 T², worked out apart from this program.
    [Theory]
    [InlineData(0)]
    [InlineData(80)]
    [InlineData(-108)]
    [InlineData(-340)]
    public void The_curve_is_the_least_squares_quadratic(double fahrenheit)
    {
        double expected =
            6.027541740616 + (0.006238538553715 * fahrenheit) - (1.2301075275534e-5 * fahrenheit * fahrenheit);

        // Half of the last digit of each term.
        double slack = 0.5e-12 + (0.5e-15 * Math.Abs(fahrenheit)) + (0.5e-18 * fahrenheit * fahrenheit);
        Assert.Equal(expected, Known.Value(Curve.PerKelvinAt(Celsius(fahrenheit))) / 1.8e-6, slack);
    }

    // The trunnion of the notes, 12.363 in from 80 degF into dry ice and into nitrogen; integrals worked out apart from this program.
    [Theory]
    [InlineData(-108, "-0.0137166664")]
    [InlineData(-321, "-0.0244524246")]
    public void A_trunnion_shrinks_less_than_a_constant_expansion_says(double fahrenheit, string inches) =>
        Known.Printed(
            inches,
            Known.Value(Curve.LengthChangeMillimetres(12.363 * 25.4, Celsius(80), Celsius(fahrenheit))) / 25.4
        );

    // The same notes with the constant 6.47e-6: 0.01503785868, 9.6 % too much.
    [Fact]
    public void A_constant_expansion_overstates_the_cold()
    {
        WorkBench.Gives(
            "length-change",
            "length=12.363 in; start=80 degF; end=-108 degF; part-expansion=0.00000647 1/degF-diff",
            "change=-0.01503785868 in"
        );
        double change = Known.Value(Curve.LengthChangeMillimetres(12.363 * 25.4, Celsius(80), Celsius(-108))) / 25.4;
        Known.Printed("1.09632", -0.01503785868 / change);
    }

    [Property]
    public void The_temperature_for_a_change_gives_that_change(byte share)
    {
        double all = Known.Value(Curve.LengthChangeMillimetres(50, Celsius(80), Curve.LowestCelsius));
        double wanted = all * share / 255;

        double celsius = Known.Value(Curve.CelsiusForChange(50, wanted, Celsius(80)));

        Assert.Equal(wanted, Known.Value(Curve.LengthChangeMillimetres(50, Celsius(80), celsius)), 1e-12);
    }

    [Fact]
    public void A_need_beyond_the_table_says_what_its_end_gives()
    {
        ShopFault fault = Known.Fault(Curve.CelsiusForChange(50, -1, Celsius(80)));

        Assert.Equal("change", fault.Argument);
        Assert.Contains("at the end of the table, -206.666667 degC", fault.Allowed, StringComparison.Ordinal);
    }

    [Fact]
    public void Outside_the_table_nothing_is_said()
    {
        Assert.Equal("end", Known.Fault(Curve.LengthChangeMillimetres(50, 20, -210)).Argument);
        Assert.Equal("start", Known.Fault(Curve.LengthChangeMillimetres(50, 30, 20)).Argument);
        Assert.Equal("temperature", Known.Fault(Curve.PerKelvinAt(double.NaN)).Argument);
        Assert.Equal("length", Known.Fault(Curve.CelsiusForChange(0, -0.1, 20)).Argument);
    }

    [Fact]
    public void A_table_that_is_none_is_refused()
    {
        Assert.Equal("temperatures", Known.Fault(ExpansionCurve.Of([])).Argument);
        Assert.Equal("temperatures", Known.Fault(ExpansionCurve.Of([(20, 1e-5), (20, 2e-5)])).Argument);
        Assert.Equal("expansions", Known.Fault(ExpansionCurve.Of([(20, 1e-5), (0, -1e-5)])).Argument);
        Assert.Equal("expansions", Known.Fault(ExpansionCurve.Of([(-10, 1e-5), (0, -1e-6), (10, 1e-5)])).Argument);
        Assert.Equal("expansions", Known.Fault(ExpansionCurve.Of([(20, double.NaN)])).Argument);
        Assert.Equal(
            "expansions",
            WorkBench
                .Fault(
                    "length-change-by-table",
                    "length=1 in; start=20 degC; end=0 degC; temperatures=20 0 degC; expansions=0.00001 1/K"
                )
                .Argument
        );
    }

    [Fact]
    public void Two_points_give_a_line_and_one_a_constant()
    {
        ExpansionCurve line = Known.Value(ExpansionCurve.Of([(0, 1e-5), (100, 2e-5)]));
        ExpansionCurve constant = Known.Value(ExpansionCurve.Of([(20, 1e-5)]));

        // By hand: the mean of a line is its middle, 1.5e-5 over 100 K on 1000 mm.
        Assert.Equal(1.5, Known.Value(line.LengthChangeMillimetres(1000, 0, 100)), 1e-12);
        Assert.Equal(1e-5, Known.Value(constant.PerKelvinAt(20)), 1e-18);
    }

    [Property]
    public void Least_squares_agree_with_a_general_library(byte seed, byte count)
    {
        Random random = new(seed);
        double[] x = [.. Enumerable.Range(0, 4 + (count % 20)).Select(i => i + (0.5 * random.NextDouble()))];
        double[] y = [.. x.Select(_ => 10 * random.NextDouble())];
        double middle = (x[0] + x[^1]) / 2;
        double half = (x[^1] - x[0]) / 2;
        ExpansionCurve curve = Known.Value(ExpansionCurve.Of([.. x.Zip(y, (at, value) => (at, value + 100))]));

        double[] theirs = Referee.Fit.Polynomial(
            [.. x.Select(at => (at - middle) / half)],
            [.. y.Select(one => one + 100)],
            2
        );

        foreach (double at in x)
        {
            Assert.Equal(
                Referee.Polynomial.Evaluate((at - middle) / half, theirs),
                Known.Value(curve.PerKelvinAt(at)),
                1e-9
            );
        }
    }

    private static double Celsius(double fahrenheit) => (fahrenheit - 32) / 1.8;
}
