using ProcRunner.Formulas;
using ProcRunner.Quantities;

namespace ProcRunner.Core.Tests.Formulas;

/// <summary>Formulas and what they give; arithmetic here is checked by hand.</summary>
public class FormulaEvaluationTests
{
    private static readonly Bench Names = Bench
        .Empty.With("aim", "0.052 in")
        .With("depth", "0.023 in")
        .With("deep mm", "1.4732 mm")
        .With("room", "20 degC")
        .With("oven", "275 degF")
        .With("kind", new FormulaValue.Word("I"))
        .With("decided.guide", new FormulaValue.Word("replace"))
        .With("odd", new FormulaValue.Word("5 mm"))
        .With("done", new FormulaValue.Truth(true))
        .Waiting("later", FormulaType.Quantity(Dimension.OfLength))
        .Waiting("later too", FormulaType.Quantity(Dimension.OfLength))
        .Waiting("later word", FormulaType.Text)
        .Waiting("later done", FormulaType.YesNo);

    [Theory]
    [InlineData("0.052 - 0.023 + 0.1", "0.129")]
    [InlineData("1/3*3", "1")]
    [InlineData("2147483647+1", "2147483648")]
    [InlineData("9223372036854775807 * 2", "18446744073709551614")]
    [InlineData("0.1 + 0.2", "0.3")]
    [InlineData(".5 + .5", "1")]
    [InlineData("2 + 3 * 4", "14")]
    [InlineData("(2 + 3) * 4", "20")]
    [InlineData("10 - 4 - 3", "3")]
    [InlineData("100 / 10 / 2", "5")]
    [InlineData("12 / 3 * 2", "8")]
    [InlineData("-2 * -3", "6")]
    [InlineData("2 - -3", "5")]
    [InlineData("- -2", "2")]
    [InlineData("-(2 + 3)", "-5")]
    [InlineData("'5 %' * 200", "10")]
    [InlineData("pow(1/3, 2) * 9", "1")]
    [InlineData("[aim] - [depth]", "0.029 in")]
    [InlineData("'1 in' - '25.4 mm'", "0 in")]
    [InlineData("[deep mm] - '0.058 in'", "0 mm")]
    [InlineData("'1 in' / 16", "0.0625 in")]
    [InlineData("[oven] - [room]", "115 K")]
    [InlineData("[room] + '115 K'", "275 degF")]
    [InlineData("'1.8 degF-diff' + [room]", "21 degC")]
    [InlineData("max([oven], [room], '100 degC')", "135 degC")]
    [InlineData("mean('0 degC', '100 degC')", "50 degC")]
    [InlineData("spread('10 degC', '18 degC')", "8 K")]
    [InlineData("median('3 mm', '1 mm', '2 mm')", "2 mm")]
    [InlineData("median('0.001 in')", "0.001 in")]
    [InlineData("roundto('0.0525 in', '0.0005 in')", "0.0525 in")]
    [InlineData("roundto('-0.5 mm', '1 mm')", "-1 mm")]
    [InlineData("downto('-0.5 mm', '1 mm')", "-1 mm")]
    [InlineData("upto('-0.5 mm', '1 mm')", "0 mm")]
    [InlineData("downto('0.52999 mm', '0.005 mm')", "0.525 mm")]
    [InlineData("tan('45 deg')", "1")]
    [InlineData("sin('390 deg')", "0.5")]
    [InlineData("cos('90 deg')", "0")]
    [InlineData("sin('0 deg')", "0")]
    [InlineData("if([kind] = 'I', '0.052 in', '0.058 in')", "0.052 in")]
    [InlineData("if(no, [later], [aim])", "0.052 in")]
    [InlineData("if(no, '1 mm' / 0, [aim])", "0.052 in")]
    [InlineData("else([later], [aim])", "0.052 in")]
    [InlineData("else([later] + [aim], else([later too], '1 mm'))", "1 mm")]
    [InlineData("else([aim], '1 mm' / 0)", "0.052 in")]
    public void A_quantity_comes_out_exactly(string text, string result) => Names.GivesExactly(result, text);

    [Fact]
    public void A_third_stays_a_third() =>
        Assert.Equal(Rational.FromRatio(29, 3), Names.Amount("mean('1 in', '1 mm', '2.6 mm')").Value);

    [Theory]
    [InlineData("'0.058 in' <= '0.058 in'", true)]
    [InlineData("[deep mm] <= '0.058 in'", true)]
    [InlineData("'0.0581 in' <= '0.058 in'", false)]
    [InlineData("'1 in' = '25.4 mm'", true)]
    [InlineData("'0.020 in' <= '0.5 mm'", false)]
    [InlineData("'0.020 in' <> '0.508 mm'", false)]
    [InlineData("1 < 2", true)]
    [InlineData("2 <= 1", false)]
    [InlineData("2 > 1", true)]
    [InlineData("1 >= 2", false)]
    [InlineData("1/3 = 0.3333333333", false)]
    [InlineData("[kind] = 'I'", true)]
    [InlineData("'E' = [kind]", false)]
    [InlineData("[kind] = 'i'", false)]
    [InlineData("[kind] <> 'E'", true)]
    [InlineData("[decided.guide] = 'replace'", true)]
    [InlineData("[odd] = '5 mm'", true)]
    [InlineData("[odd] = '5.0 mm'", false)]
    [InlineData("if([done], [kind], [odd]) = 'I'", true)]
    [InlineData("else([later word], 'keep') = 'keep'", true)]
    [InlineData("[done] = yes", true)]
    [InlineData("[done] <> yes", false)]
    [InlineData("[done] = (1 > 2)", false)]
    [InlineData("(1 > 2) = [done]", false)]
    [InlineData("not [done]", false)]
    [InlineData("not (1 > 2)", true)]
    [InlineData("not not [done]", true)]
    [InlineData("yes or no and no", true)]
    [InlineData("(yes or no) and no", false)]
    [InlineData("not no and no", false)]
    [InlineData("1 + 1 = 2 and 2 * 2 = 4", true)]
    [InlineData("no and [later] > '1 mm'", false)]
    [InlineData("yes or [later] > '1 mm'", true)]
    [InlineData("known([aim])", true)]
    [InlineData("known([later])", false)]
    [InlineData("known([aim] + [later])", false)]
    [InlineData("known([later]) and [later] > '1 mm'", false)]
    [InlineData("'20 degC' = '68 degF'", true)]
    public void A_yes_or_no_comes_out(string text, bool result) => Assert.Equal(result, Names.Truth(text));

    [Theory]
    [InlineData("[later]", "later")]
    [InlineData("[aim] - [later too] - [later]", "later too")]
    [InlineData("min([aim], [later])", "later")]
    [InlineData("not [later done]", "later done")]
    [InlineData("[later done] and no", "later done")]
    [InlineData("yes and [later done]", "later done")]
    [InlineData("if([later done], 1, 2)", "later done")]
    [InlineData("[later word] = 'x'", "later word")]
    [InlineData("[aim] > [later]", "later")]
    [InlineData("else([later], [later too])", "later too")]
    [InlineData("-[later]", "later")]
    [InlineData("[later] / 0", "later")]
    public void What_is_not_known_yet_is_named(string text, string name) =>
        Assert.Equal(new FormulaOutcome.Missing(name), Names.Outcome(text));

    [Theory]
    [InlineData("1/0", "divides by zero")]
    [InlineData("[aim] / ([depth] - [depth])", "divides by zero")]
    [InlineData("known(1/0)", "divides by zero")]
    [InlineData("else(1/0, 1)", "divides by zero")]
    [InlineData("1/0 > 1 or yes", "divides by zero")]
    [InlineData("pow(0, -1)", "divides by zero")]
    [InlineData("sqrt(-1)", "no square root")]
    [InlineData("tan('90 deg')", "tangent does not exist")]
    [InlineData("tan('-270 deg')", "tangent does not exist")]
    [InlineData("sink('1 mm', '90 deg')", "between 0 and 90 deg")]
    [InlineData("diametergrowth('1 mm', '0 deg')", "between 0 and 90 deg")]
    [InlineData("spindlespeed('60 ft/min', '0 in')", "diameter: it must be above 0")]
    [InlineData("springrate('1 lbf', '1 in', '2 lbf', '1 in')", "divides by zero")]
    [InlineData("assemblytemperature('1 mm', '1 mm', '0 1/K', '38 mm')", "expansion: it must be above 0")]
    [InlineData("roundto('1 mm', '0 mm')", "a step is above zero")]
    [InlineData("percentoff('1 mm', '0 mm')", "divides by zero")]
    [InlineData("pow(pow(pow(10, 12), 12), 12)", "too many digits")]
    [InlineData("sqrt(pow(pow(10, 12), 12) * pow(pow(10, 12), 12) * pow(pow(10, 12), 12))", "too large")]
    public void What_can_not_be_worked_out_says_why(string text, string why) =>
        Assert.Contains(
            why,
            Assert.IsType<FormulaOutcome.Impossible>(Names.Outcome(text)).Why,
            StringComparison.Ordinal
        );

    [Fact]
    public void A_scope_that_gives_another_type_than_promised_is_caught()
    {
        Bench lying = Bench
            .Empty.Lying("x", FormulaType.Quantity(Dimension.OfLength), new FormulaValue.Word("deep"))
            .Lying(
                "y",
                FormulaType.Quantity(Dimension.OfLength),
                new FormulaValue.Amount(new Exact(Rational.One, Dimension.None))
            );

        Assert.Contains(
            "[x] is a text and was promised as a length",
            Assert.IsType<FormulaOutcome.Impossible>(lying.Outcome("[x] * 2")).Why,
            StringComparison.Ordinal
        );
        Assert.IsType<FormulaOutcome.Impossible>(lying.Outcome("[y] > '1 mm'"));
    }

    [Fact]
    public void A_text_comes_out_as_it_is() =>
        Assert.Equal(new FormulaValue.Word("replace"), Names.Value("[decided.guide]"));

    [Fact]
    public void A_root_and_back_is_the_square_to_10_digits() => Names.Gives("2.0000000000", "pow(sqrt(2), 2)");
}
