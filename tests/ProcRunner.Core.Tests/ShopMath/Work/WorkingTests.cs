using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Work;

public class WorkingTests
{
    [Fact]
    public void A_step_is_written_in_words_then_with_numbers_then_its_result()
    {
        WorkAnswer answer = WorkBench.Answer("target-bore", "part=1.6445 in; interference=0.0020 in");

        Assert.Equal(
            ["bore = part - interference", "    = 1.6445 in - 0.0020 in", "    = 1.6425 in"],
            answer.Steps.Single().Lines
        );
    }

    [Fact]
    public void A_later_step_shows_the_result_of_an_earlier_one()
    {
        WorkAnswer answer = WorkBench.Answer(
            "coil-bind",
            "height=1.8 in; lift=0.472 in; solid=1.25 in; margin=0.05 in"
        );

        Assert.Equal("0.078 in - 0.05 in", answer.Steps[^1].WithNumbers);
    }

    [Theory]
    [InlineData(
        "spring-from-wire",
        "wire=5 mm; mean-diameter=30 mm; coils=15; shear-modulus=84 GPa",
        "84 GPa x (5 mm)^4 / (8 x (30 mm)\u00B3 x 15)"
    )]
    [InlineData(
        "length-change",
        "length=1 mm; start=-20 degC; end=-40 degC; part-expansion=0.00001 1/K",
        "-40 degC - (-20 degC)"
    )]
    public void What_needs_brackets_has_them(string function, string given, string withNumbers) =>
        Assert.Equal(withNumbers, WorkBench.Answer(function, given).Steps[0].WithNumbers);

    [Theory]
    [InlineData("part=38.05 mm; interference=0.1 mm", "37.95 mm")]
    [InlineData("part=1.5 in; interference=0.1 mm", "1.49606 in")]
    public void Results_are_in_the_units_of_the_lengths_given(string given, string shown) =>
        Assert.Equal(shown, WorkBench.Answer("target-bore", given).Results[0].Text);

    [Fact]
    public void A_fault_shows_the_value_as_it_was_typed()
    {
        ShopFault fault = WorkBench.Fault("spindle-speed", "speed=60 ft/min; diameter=0.0 in");

        Assert.Equal("diameter: 0.0 in was read; it must be above 0", fault.ToString());
    }

    [Fact]
    public void A_number_too_large_to_be_written_is_a_fault() =>
        Assert.Contains(
            "past any size of the shop",
            WorkBench
                .Fault(
                    "leak-rate",
                    "volume=999999999999 in3; start=999999999999 GPa; end=0 GPa; time=0.000000000000001 s"
                )
                .ToString(),
            StringComparison.Ordinal
        );

    // Twelve significant digits are kept and six shown, unless the number is exact with few places.
    [Theory]
    [InlineData(1, 3, "0.333333333333 mm", "0.333333 mm")]
    [InlineData(200000, 3, "66666.6666667 mm", "66666.7 mm")]
    [InlineData(1, 8, "0.125 mm", "0.125 mm")]
    [InlineData(-1, 16, "-0.0625 mm", "-0.0625 mm")]
    [InlineData(0, 1, "0 mm", "0 mm")]
    [InlineData(123456789, 1000, "123456.789 mm", "123456.789 mm")]
    [InlineData(1234567891, 10000, "123456.789100 mm", "123457 mm")]
    public void A_figure_keeps_more_digits_than_it_shows(int above, int below, string kept, string shown)
    {
        WorkFigure figure = WorkFigure.Of(
            "x",
            new Exact(Rational.FromRatio(above, below), Dimension.OfLength),
            Units.Millimetre
        )!;

        Assert.Equal(kept, figure.Value.ToString());
        Assert.Equal(shown, figure.Text);
    }

    [Theory]
    [InlineData(0.1 + 0.2, "3/10")]
    [InlineData(0, "0")]
    [InlineData(-1e-300, null)]
    public void Twelve_digits_cut_the_noise_of_a_double_off(double value, string? ratio)
    {
        Assert.True(TwelveDigits.TryRound(value, out Rational rounded));
        Assert.Equal(ratio ?? rounded.ToString(), rounded.ToString());
        Assert.InRange(rounded.ToDouble(), value - Math.Abs(value * 1e-11), value + Math.Abs(value * 1e-11));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void What_is_no_number_does_not_become_one(double value) =>
        Assert.False(TwelveDigits.TryRound(value, out _));

    // What comes out of thousandths is shown to thousandths, a trailing nought included; what has no end, to six digits.
    [Theory]
    [InlineData(
        "spring-shims",
        "measured=1.760 in; wanted=1.700 in; tolerance=0.005 in; drawer=0.030 0.060 in; stack-limit=0.060 in",
        "needed",
        "0.060 in"
    )]
    [InlineData("target-bore", "part=38.100 mm; interference=0.1 mm", "bore", "38.000 mm")]
    [InlineData("target-bore", "part=1.500 in; interference=0.0020 in", "bore", "1.4980 in")]
    [InlineData("target-bore", "part=1.500 in; interference=0.0508 mm", "bore", "1.498 in")]
    [InlineData("sink-from-face", "removed=0.10 mm; face-angle=60 deg", "sink", "0.20 mm")]
    [InlineData("sink-from-face", "removed=0.10 mm; face-angle=45 deg", "sink", "0.141421 mm")]
    public void A_result_is_shown_to_the_places_that_were_given(
        string function,
        string given,
        string name,
        string text
    ) => Assert.Equal(text, WorkBench.Answer(function, given).Find(name)!.Text);
}
