using ProcRunner.Quantities;

namespace ProcRunner.Tests.Quantities;

public sealed class ExactTests
{
    private static readonly Exact TwoInches = Exact.Of(new Quantity(2, Units.Inch));
    private static readonly Exact Hot = Exact.Of(new Quantity(212, Units.Fahrenheit));
    private static readonly Exact Cold = Exact.Of(new Quantity(0, Units.Celsius));
    private static readonly Exact Warming = Exact.Of(new Quantity(180, Units.FahrenheitDifference));

    // 25.4 mm to the inch is exact (NIST SP 811); 212 degF is 100 degC, 32 degF is 0 degC.
    [Fact]
    public void Amounts_add_subtract_multiply_and_divide_with_their_units()
    {
        Exact force = Exact.Of(new Quantity(10, Units.Newton));

        Assert.Equal(
            Exact.Of(new Quantity(76.2m, Units.Millimetre)),
            TwoInches + Exact.Of(new Quantity(1, Units.Inch))
        );
        Assert.Equal(Exact.Of(new Quantity(0, Units.Millimetre)), TwoInches - TwoInches);
        Assert.Equal(
            Exact.Of(new Quantity(5, Units.PoundForcePerInch)),
            Exact.Of(new Quantity(10, Units.PoundForce)) / TwoInches
        );
        Assert.Equal(force, force / TwoInches * TwoInches);
    }

    [Fact]
    public void Temperatures_differ_by_a_difference_and_move_by_one()
    {
        Assert.Equal(Warming, Hot - Cold);
        Assert.Equal(Hot, Cold + Warming);
    }

    [Fact]
    public void What_does_not_go_together_throws()
    {
        Assert.Throws<ArgumentException>(() => TwoInches + Warming);
        Assert.Throws<ArgumentException>(() => Hot + Cold);
        Assert.Throws<ArgumentException>(() => TwoInches - Warming);
        Assert.Throws<ArgumentException>(() => Hot * TwoInches);
        Assert.Throws<ArgumentException>(() => Hot / TwoInches);
        Assert.Throws<DivideByZeroException>(() => TwoInches / (TwoInches - TwoInches));
    }
}
