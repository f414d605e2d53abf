using ProcRunner.Quantities;

namespace ProcRunner.Tests.Quantities;

/// <summary>Which units stand on one paper: common practice, no source.</summary>
public class PaperUnitsTests
{
    [Theory]
    [InlineData("N", "in", "lbf")]
    [InlineData("N/mm", "in", "lbf/in")]
    [InlineData("N/mm", "thou", "lbf/in")]
    [InlineData("lbf", "mm", "N")]
    [InlineData("lbf/in", "mm", "N/mm")]
    [InlineData("lbf/in", "um", "N/mm")]
    [InlineData("degC", "in", "degF")]
    [InlineData("psi", "mm", "kPa")]
    [InlineData("mm", "in", "in")]
    [InlineData("in", "mm", "mm")]
    [InlineData("in3", "in", "cm3")]
    [InlineData("arcmin", "in", "deg")]
    public void A_value_has_the_unit_that_goes_with_the_papers_lengths(string measures, string length, string unit) =>
        Assert.Equal(unit, PaperUnits.Of(Units.Find(measures)!.Dimension, Units.Find(length)!).Symbol);

    // No kind of quantity is without one, and none gets another's.
    [Fact]
    public void Every_kind_of_quantity_has_one_on_both_papers() =>
        Assert.All(
            Units.All,
            unit =>
                Assert.All(
                    [Units.Inch, Units.Millimetre],
                    length => Assert.Equal(unit.Dimension, PaperUnits.Of(unit.Dimension, length).Dimension)
                )
        );
}
