using FsCheck.Xunit;
using ProcRunner.Formulas;
using ProcRunner.Quantities;

namespace ProcRunner.Core.Tests.Formulas;

public class FormulaPropertyTests
{
    /// <summary>Arithmetic against ratios worked out beside the text, by someone who knows no precedence but the schoolbook's.</summary>
    [Property(MaxTest = 500, Arbitrary = [typeof(FormulaTrees)])]
    public void Arithmetic_is_the_schoolbooks(FormulaTrees.Sum sum)
    {
        if (sum.Text.Length > 500)
        {
            return;
        }

        FormulaOutcome outcome = Bench.Empty.Outcome(sum.Text);

        if (sum.Below.IsZero)
        {
            Assert.IsType<FormulaOutcome.Impossible>(outcome);
            return;
        }

        FormulaOutcome.Known known = Assert.IsType<FormulaOutcome.Known>(outcome);
        Rational given = Assert.IsType<FormulaValue.Amount>(known.Value).Value.Value;
        Assert.Equal(sum.Above * given.Denominator, given.Numerator * sum.Below);
    }

    [Property(MaxTest = 500, Arbitrary = [typeof(FormulaTrees)])]
    public void It_makes_no_difference_whether_inputs_were_entered_in_inches_or_millimetres(FormulaTrees.Typed formula)
    {
        if (formula.Inches.Length > 500 || formula.Millimetres.Length > 500)
        {
            return;
        }

        Bench inches = FormulaTrees.Readings(value => $"{Plain(value)} in");
        Bench millimetres = FormulaTrees.Readings(value => $"{Plain(value * 25.4m)} mm");

        FormulaOutcome first = inches.Outcome(formula.Inches);
        FormulaOutcome second = millimetres.Outcome(formula.Millimetres);

        Assert.Equal(first, second);
    }

    /// <summary>The other way: a formula whose units hold stops holding when one of its inputs changes its dimension.</summary>
    [Property(MaxTest = 200, Arbitrary = [typeof(FormulaTrees)])]
    public void A_sum_with_one_input_of_another_dimension_is_refused(FormulaTrees.Typed formula)
    {
        string text = $"({formula.Inches}) + [force]";
        Bench bench = FormulaTrees.Readings(value => $"{Plain(value)} in").With("force", "1 lbf");
        if (text.Length > 500)
        {
            return;
        }

        Assert.Contains(bench.Problems(text), problem => problem.Fault == FormulaFault.Units);
    }

    [Property(MaxTest = 300, Arbitrary = [typeof(FormulaTrees)])]
    public void What_is_compiled_is_worked_out_the_same_twice_and_shown(FormulaTrees.Typed formula)
    {
        if (formula.Inches.Length > 500)
        {
            return;
        }

        Bench bench = FormulaTrees.Readings(value => $"{Plain(value)} in");
        Formula compiled = bench.Compiled(formula.Inches);

        Assert.Equal(compiled.Evaluate(bench), compiled.Evaluate(bench));
        Assert.Contains(" = ", compiled.Working(bench, Units.Inch, 4), StringComparison.Ordinal);
        Assert.DoesNotContain("[", compiled.Working(bench, Units.Inch, 4), StringComparison.Ordinal);
    }

    private static string Plain(decimal value) => FormulaTrees.Plain(value);
}
