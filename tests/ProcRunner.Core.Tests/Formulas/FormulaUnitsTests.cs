using ProcRunner.Formulas;
using ProcRunner.Quantities;

namespace ProcRunner.Core.Tests.Formulas;

/// <summary>Texts that read well and don't hold: units that don't balance, and types that don't fit.</summary>
public class FormulaUnitsTests
{
    private static readonly Bench Names = Bench
        .Empty.With("depth", "0.052 in")
        .With("load", "97.5 lbf")
        .With("angle", "45 deg")
        .With("room", "20 degC")
        .With("count", "4")
        .With("kind", new FormulaValue.Word("I"))
        .With("done", new FormulaValue.Truth(true));

    [Theory]
    // A number without its unit.
    [InlineData("[depth] + 0.01", FormulaFault.Units, "0.01", "0.01 has no unit: write '0.01 in'")]
    [InlineData("0.01 - [depth]", FormulaFault.Units, "0.01", "0.01 has no unit: write '0.01 in'")]
    [InlineData("[depth] > 0.01", FormulaFault.Units, "0.01", "0.01 has no unit: write '0.01 in'")]
    [InlineData("[depth] > -0.01", FormulaFault.Units, "0.01", "write '0.01 in'")]
    [InlineData("[depth] - '0.2 mm' > 0.01", FormulaFault.Units, "0.01", "write '0.01 mm'")]
    [InlineData("sink(0.1, '45 deg')", FormulaFault.Units, "0.1", "write '0.1 in'")]
    [InlineData("sin(45)", FormulaFault.Units, "45", "write '45 deg'")]
    [InlineData("max([depth], 0.05)", FormulaFault.Units, "0.05", "write '0.05 in'")]
    [InlineData("if(yes, [depth], 0)", FormulaFault.Units, "0", "write '0 in'")]
    [InlineData(
        "[depth] > [count]",
        FormulaFault.Units,
        "[depth] > [count]",
        "[depth] is a length and [count] is a pure number"
    )]
    // Units that don't go together.
    [InlineData(
        "[depth] + [load]",
        FormulaFault.Units,
        "[depth] + [load]",
        "[depth] is a length and [load] is a force: they can't be added"
    )]
    [InlineData("[depth] - [angle]", FormulaFault.Units, "[depth] - [angle]", "is an angle: they can't be subtracted")]
    [InlineData("[depth] = [load]", FormulaFault.Units, "[depth] = [load]", "can't be compared")]
    [InlineData("[depth] * [depth] > [depth]", FormulaFault.Units, "[depth] * [depth] > [depth]", "is an area and")]
    [InlineData("min([depth], [load])", FormulaFault.Units, "[load]", "can't be taken together by min")]
    [InlineData("sink([depth], [load])", FormulaFault.Units, "[load]", "but face angle of sink is an angle")]
    [InlineData("else([depth], [load])", FormulaFault.Units, "[load]", "can't be taken together by else")]
    [InlineData("sqrt([depth])", FormulaFault.Units, "sqrt", "has no root")]
    [InlineData("pow(pow(pow([depth], 12), 12), 2)", FormulaFault.Units, "pow", "has no such power")]
    // Temperatures are places on a scale.
    [InlineData("[room] + '20 degC'", FormulaFault.Units, "[room] + '20 degC'", "can't be added")]
    [InlineData("[room] * 2", FormulaFault.Units, "[room] * 2", "can't be multiplied")]
    [InlineData("'100 K' - [room]", FormulaFault.Units, "'100 K' - [room]", "can't be subtracted")]
    [InlineData("-[room]", FormulaFault.Kind, "[room]", "no sign to turn")]
    [InlineData("abs([room])", FormulaFault.Units, "[room]", "no amount that abs can take")]
    // Yes-or-no and text.
    [InlineData("[depth] and [done]", FormulaFault.Kind, "[depth]", "each side of 'and' is yes or no")]
    [InlineData("not [depth] = '1 in'", FormulaFault.Kind, "[depth]", "stands in parentheses")]
    [InlineData("[done] + 1", FormulaFault.Kind, "[done]", "can't be added")]
    [InlineData("2 * [kind]", FormulaFault.Kind, "[kind]", "[kind] is a text, which can't be multiplied")]
    [InlineData("[kind] + 'x'", FormulaFault.Kind, "[kind]", "can't be added")]
    [InlineData("'a' + '1 mm'", FormulaFault.Kind, "'a'", "no quantity with a known unit")]
    [InlineData("'a' = '1 mm'", FormulaFault.Kind, "'a'", "not compared with a text")]
    [InlineData("[kind] < 'I'", FormulaFault.Kind, "[kind] < 'I'", "equal to another or not")]
    [InlineData("[done] > no", FormulaFault.Kind, "[done] > no", "equal to another or not")]
    [InlineData("[kind] = 5", FormulaFault.Kind, "[kind] = 5", "can't be compared")]
    [InlineData("[depth] > 'deep'", FormulaFault.Kind, "'deep'", "no quantity with a known unit")]
    [InlineData("[depth] > '0.05 ell'", FormulaFault.Kind, "'0.05 ell'", "no quantity with a known unit")]
    [InlineData(
        "'0.1 in' < [depth] < '0.2 in'",
        FormulaFault.Kind,
        "'0.1 in' < [depth] < '0.2 in'",
        "join two with 'and'"
    )]
    [InlineData("[done] = yes = no", FormulaFault.Kind, "[done] = yes = no", "join two with 'and'")]
    [InlineData("if([depth], 1, 2)", FormulaFault.Kind, "[depth]", "condition of if is yes or no")]
    [InlineData("if([done], 1, [kind])", FormulaFault.Kind, "[kind]", "if takes one type only")]
    [InlineData("min([kind])", FormulaFault.Kind, "[kind]", "value of min is a quantity")]
    // Functions.
    [InlineData("sink([depth])", FormulaFault.Arguments, "sink", "takes removed, face angle, not 1 values")]
    [InlineData("min()", FormulaFault.Arguments, "min", "takes value (one or more), not 0 values")]
    [InlineData("pow([depth], [count])", FormulaFault.Arguments, "[count]", "whole number -12 to 12")]
    [InlineData("pow([depth], 0.5)", FormulaFault.Arguments, "0.5", "whole number -12 to 12")]
    [InlineData("pow([depth], 13)", FormulaFault.Arguments, "13", "whole number -12 to 12")]
    public void A_formula_that_does_not_hold_is_refused_once(string text, FormulaFault fault, string part, string says)
    {
        FormulaProblem problem = Assert.Single(Names.Problems(text));

        Assert.Equal((fault, part), (problem.Fault, problem.Part));
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
        Assert.Equal(part, text.Substring(problem.Position, problem.Length));
    }

    [Fact]
    public void The_type_wanted_is_held()
    {
        FormulaType length = FormulaType.Quantity(Dimension.OfLength);

        Assert.Equal("0.01 has no unit: write '0.01 in'", Names.Problems("0.01", length)[0].Message);
        Assert.Equal(
            "[load] is a force, but what is needed here is a length",
            Names.Problems("[load]", length)[0].Message
        );
        Assert.Equal(
            "[depth] is a length, but what is needed here is yes or no",
            Names.Problems("[depth]", FormulaType.YesNo)[0].Message
        );
        Assert.Equal(length, Names.Compiled("[depth] * 2", length).Type);
        Assert.Equal(FormulaType.Text, Names.Compiled("'replace'", FormulaType.Text).Type);
    }

    [Theory]
    [InlineData("[depth] * [depth]", 2, 0)]
    [InlineData("pow([depth], 3)", 3, 0)]
    [InlineData("pow([depth], -2)", -2, 0)]
    [InlineData("[depth] / [angle]", 1, -1)]
    [InlineData("[depth] / [depth]", 0, 0)]
    [InlineData("sqrt([depth] * [depth])", 1, 0)]
    [InlineData("sqrt(pow([depth], -4))", -2, 0)]
    public void A_product_carries_its_units_along(string text, int length, int angle) =>
        Assert.Equal(
            FormulaType.Quantity(new Dimension((sbyte)length, 0, 0, 0, (sbyte)angle, IsTemperaturePoint: false)),
            Names.Compiled(text).Type
        );
}
