using ProcRunner.Formulas;
using ProcRunner.Quantities;

namespace ProcRunner.Core.Tests.Formulas;

public class FormulaWorkingTests
{
    private static readonly Bench Names = Bench
        .Empty.With("spec.recession.aim", "0.052 in")
        .With("recession", "0.5842 mm")
        .With("face angle", "45 deg")
        .With("kind", new FormulaValue.Word("I"))
        .With("no text", new FormulaValue.Amount(new Exact(Rational.FromInteger(90), Dimension.OfAngle)))
        .With("speed", "60 ft/min")
        .With("done", new FormulaValue.Truth(false))
        .Waiting("later", FormulaType.Quantity(Dimension.OfLength));

    [Theory]
    [InlineData("[spec.recession.aim] - [recession]", "0.0520 - 0.0230 = 0.0290")]
    [InlineData("  [spec.recession.aim]-  [recession] ", "0.0520- 0.0230 = 0.0290")]
    [InlineData("[recession] + '0.005 in' * 2", "0.0230 + 0.0050 * 2 = 0.0330")]
    [InlineData("sink('0.010 in', [face angle])", "sink(0.0100, 45 deg) = 0.0141")]
    [InlineData("[no text] / 2", "90.0000 deg / 2 = 45.0000 deg")]
    [InlineData("if([kind] = 'I', [recession], '1 in')", "if(I = I, 0.0230, 1.0000) = 0.0230")]
    [InlineData("[recession] <= [spec.recession.aim]", "0.0230 <= 0.0520 = yes")]
    [InlineData("[done] or no", "no or no = no")]
    [InlineData("[recession] - [later]", "0.0230 - ? = ? ([later] is not known yet)")]
    [InlineData("[recession] / 0", "0.0230 / 0 = ? (it divides by zero)")]
    [InlineData("spindlespeed([speed], '5 in')", "spindlespeed(60 ft/min, 5.0000) = 45.8366 rpm")]
    [InlineData("[recession] / [spec.recession.aim]", "0.0230 / 0.0520 = 0.4423")]
    [InlineData("[recession] * [recession]", "0.0230 * 0.0230 = 0.0034 cm2")]
    [InlineData("pow([recession], 4)", "pow(0.0230, 4) = 0.116479 (base units of length^4)")]
    public void The_numbers_are_filled_in(string text, string shown) =>
        Assert.Equal(shown, Names.Compiled(text).Working(Names, Units.Inch, 4));

    [Fact]
    public void The_same_formula_shows_in_another_unit() =>
        Assert.Equal(
            "1.321 - 0.584 = 0.737",
            Names.Compiled("[spec.recession.aim] - [recession]").Working(Names, Units.Millimetre, 3)
        );
}
