using ProcRunner.Formulas;
using ProcRunner.Quantities;

namespace ProcRunner.Core.Tests.Formulas;

/// <summary>Texts that are no formula: what is said, about which part, at which place.</summary>
public class FormulaTextTests
{
    private static readonly Bench Names = Bench
        .Empty.With("depth", "0.052 in")
        .With("aim", "0.058 in")
        .With("spec.recession.aim", "0.055 in")
        .With("seat angle", "45 deg")
        .With("kind", new FormulaValue.Word("I"))
        .With("done", new FormulaValue.Truth(true));

    [Theory]
    // Nothing there, or something missing.
    [InlineData("", FormulaFault.Unreadable, 0, "", "it is empty")]
    [InlineData("   ", FormulaFault.Unreadable, 3, "", "it is empty")]
    [InlineData("1 +", FormulaFault.Unreadable, 3, "", "a value is missing at the end")]
    [InlineData("* 2", FormulaFault.Unreadable, 0, "*", "a value is missing before '*'")]
    [InlineData("1 + * 2", FormulaFault.Unreadable, 4, "*", "a value is missing before '*'")]
    [InlineData("+2", FormulaFault.Unreadable, 0, "+", "a value is missing before '+'")]
    [InlineData("1 2", FormulaFault.Unreadable, 2, "2", "an operator is missing")]
    [InlineData("[depth] [aim]", FormulaFault.Unreadable, 8, "[aim]", "an operator is missing")]
    [InlineData("2 (3)", FormulaFault.Unreadable, 2, "(", "an operator is missing")]
    [InlineData("2 max(3)", FormulaFault.Unreadable, 2, "max", "an operator is missing")]
    [InlineData("yes not no", FormulaFault.Unreadable, 4, "not", "an operator is missing")]
    [InlineData("(1 + 2", FormulaFault.Unreadable, 0, "(", "not closed")]
    [InlineData("1 + 2)", FormulaFault.Unreadable, 5, ")", "closes none")]
    [InlineData("()", FormulaFault.Unreadable, 1, ")", "a value is missing")]
    [InlineData("max(1,)", FormulaFault.Unreadable, 6, ")", "a value is missing")]
    [InlineData("max(,1)", FormulaFault.Unreadable, 4, ",", "a value is missing")]
    [InlineData("1,5", FormulaFault.Unreadable, 1, ",", "a decimal has a point: 1.5")]
    [InlineData("(1,5)", FormulaFault.Unreadable, 2, ",", "a decimal has a point: 1.5")]
    [InlineData("[depth", FormulaFault.Unreadable, 0, "[depth", "a ] is missing")]
    [InlineData("[]", FormulaFault.Unreadable, 0, "[]", "between the brackets alone")]
    [InlineData("[ depth]", FormulaFault.Unreadable, 0, "[ depth]", "without blanks")]
    [InlineData("[de[pth]", FormulaFault.Unreadable, 0, "[de[pth]", "between the brackets alone")]
    [InlineData("'0.010 in", FormulaFault.Unreadable, 0, "'0.010 in", "a ' is missing")]
    [InlineData("yes = not no", FormulaFault.Unreadable, 6, "not", "in parentheses: (not ...)")]
    // Numbers.
    [InlineData("1.2.3", FormulaFault.Unreadable, 0, "1.2.3", "two points")]
    [InlineData("5.", FormulaFault.Unreadable, 0, "5.", "ends with its point")]
    [InlineData(".", FormulaFault.Unreadable, 0, ".", "ends with its point")]
    [InlineData("1e3", FormulaFault.Unreadable, 0, "1e3", "without an exponent")]
    [InlineData("0x10", FormulaFault.Unreadable, 0, "0x10", "run together")]
    [InlineData("0.010in", FormulaFault.Unreadable, 0, "0.010in", "in quotes: '0.010 in'")]
    [InlineData("0.010 in", FormulaFault.LeftOut, 6, "in", "'in' is left out")]
    [InlineData("0.254 mm", FormulaFault.Unreadable, 6, "mm", "in quotes: '0.254 mm'")]
    [InlineData(
        "0.00000000000000000000000000001",
        FormulaFault.Unreadable,
        0,
        "0.00000000000000000000000000001",
        "more digits"
    )]
    [InlineData(
        "99999999999999999999999999999",
        FormulaFault.Unreadable,
        0,
        "99999999999999999999999999999",
        "more digits"
    )]
    // What other languages have.
    [InlineData("[depth]^2", FormulaFault.LeftOut, 7, "^", "pow(x, 2)")]
    [InlineData("2 ** 3", FormulaFault.LeftOut, 2, "**", "pow(x, 2)")]
    [InlineData("[kind] == 'I'", FormulaFault.LeftOut, 7, "==", "write '='")]
    [InlineData("[kind] != 'I'", FormulaFault.LeftOut, 7, "!=", "write '<>'")]
    [InlineData("[done] && [done]", FormulaFault.LeftOut, 7, "&&", "write 'and'")]
    [InlineData("[done] || [done]", FormulaFault.LeftOut, 7, "||", "write 'or'")]
    [InlineData("!yes", FormulaFault.LeftOut, 0, "!", "write 'not'")]
    [InlineData("5 % 2", FormulaFault.LeftOut, 2, "%", "'5 %'")]
    [InlineData("1 << 2", FormulaFault.LeftOut, 2, "<<", "bits")]
    [InlineData("1 & 2", FormulaFault.LeftOut, 2, "&", "bits")]
    [InlineData("~1", FormulaFault.LeftOut, 0, "~", "bits")]
    [InlineData("[depth] ?? '0 in'", FormulaFault.LeftOut, 8, "??", "else(x, fallback)")]
    [InlineData("{depth}", FormulaFault.LeftOut, 0, "{", "[name]")]
    [InlineData("\"0.010 in\"", FormulaFault.LeftOut, 0, "\"", "single quotes")]
    [InlineData("#2020-01-01#", FormulaFault.LeftOut, 0, "#", "dates")]
    [InlineData("max(1; 2)", FormulaFault.LeftOut, 5, ";", "separated by ','")]
    [InlineData("[kind] in ('I', 'E')", FormulaFault.LeftOut, 7, "in", "'in' is left out")]
    [InlineData("[done] = true", FormulaFault.LeftOut, 9, "true", "write 'yes'")]
    [InlineData("1 \u2212 2", FormulaFault.LeftOut, 2, "\u2212", "write '-'")]
    [InlineData("[depth] \u2264 [aim]", FormulaFault.LeftOut, 8, "\u2264", "write '<='")]
    [InlineData("1 \u20AC", FormulaFault.Unreadable, 2, "\u20AC", "no meaning")]
    [InlineData("1 + \U0001F600", FormulaFault.Unreadable, 4, "\U0001F600", "no meaning")]
    [InlineData("yes AND no", FormulaFault.Unreadable, 4, "AND", "small letters: and")]
    [InlineData("max + 1", FormulaFault.Unreadable, 0, "max", "in parentheses behind it")]
    [InlineData("depth - [aim]", FormulaFault.Unreadable, 0, "depth", "in brackets, [depth]")]
    // Names.
    [InlineData("[depht]", FormulaFault.UnknownName, 0, "[depht]", "near to it: [depth]")]
    [InlineData("[Depth]", FormulaFault.UnknownName, 0, "[Depth]", "near to it: [depth]")]
    [InlineData("[zzzzzzzz]", FormulaFault.UnknownName, 0, "[zzzzzzzz]", "not known here")]
    [InlineData("sinc('45 deg')", FormulaFault.UnknownFunction, 0, "sinc", "near to it: sin")]
    [InlineData("Max(1, 2)", FormulaFault.UnknownFunction, 0, "Max", "near to it: max")]
    public void A_text_is_refused_with_its_place(
        string text,
        FormulaFault fault,
        int position,
        string part,
        string says
    )
    {
        FormulaProblem problem = Names.Problems(text)[0];

        Assert.Equal((fault, position, part), (problem.Fault, problem.Position, problem.Part));
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
        Assert.Equal(part, text.Substring(problem.Position, problem.Length));
    }

    [Fact]
    public void All_problems_come_in_one_go_in_the_order_of_the_text()
    {
        IReadOnlyList<FormulaProblem> problems = Names.Problems(
            "[depht] + [ame] > 0.01 and [aim] + '45 deg' > [seat angle] or frob(1)"
        );

        Assert.Equal(["[depht]", "[ame]", "[aim] + '45 deg'", "frob"], problems.Select(problem => problem.Part));
    }

    [Fact]
    public void Names_are_searched_even_where_the_text_can_not_be_read()
    {
        IReadOnlyList<FormulaProblem> problems = Names.Problems("[depht]^2 + frob(1)");

        Assert.Equal(
            [FormulaFault.UnknownName, FormulaFault.LeftOut, FormulaFault.UnknownFunction],
            problems.Select(problem => problem.Fault)
        );
    }

    [Fact]
    public void A_long_part_is_cut_in_the_message()
    {
        FormulaProblem problem = Names.Problems($"[{new string('x', 100)}]")[0];

        Assert.Equal(60, problem.Part.Length);
        Assert.Equal(102, problem.Length);
    }

    [Fact]
    public void A_formula_of_500_characters_is_read_and_one_more_is_not()
    {
        string longest = "1" + string.Concat(Enumerable.Repeat("+1", 249)) + " ";
        Assert.Equal(500, longest.Length);

        Bench.Empty.GivesExactly("250", longest);
        Assert.Equal(FormulaFault.TooLarge, Assert.Single(Bench.Empty.Problems(longest + " ")).Fault);
    }

    [Theory]
    [InlineData(32, true)]
    [InlineData(33, false)]
    public void Parentheses_nest_32_deep(int depth, bool read)
    {
        string text = new string('(', depth) + "1" + new string(')', depth);
        string functions = string.Concat(Enumerable.Repeat("abs(", depth)) + "1" + new string(')', depth);

        Assert.Equal(read, FormulaCompiler.Compile(text, Bench.Empty, null) is FormulaResult.Compiled);
        Assert.Equal(read, FormulaCompiler.Compile(functions, Bench.Empty, null) is FormulaResult.Compiled);
    }

    [Theory]
    [InlineData(32, true)]
    [InlineData(33, false)]
    public void Signs_stand_32_in_a_row(int count, bool read)
    {
        string signs = new string('-', count) + "1";
        string words = string.Concat(Enumerable.Repeat("not ", count)) + "yes";

        Assert.Equal(read, FormulaCompiler.Compile(signs, Bench.Empty, null) is FormulaResult.Compiled);
        Assert.Equal(read, FormulaCompiler.Compile(words, Bench.Empty, null) is FormulaResult.Compiled);
    }

    [Fact]
    public void A_formula_keeps_its_text_and_its_names_in_order_each_once()
    {
        Formula formula = Names.Compiled(" [spec.recession.aim] - [depth] + min([depth], [aim]) ");

        Assert.Equal(" [spec.recession.aim] - [depth] + min([depth], [aim]) ", formula.Text);
        Assert.Equal(["spec.recession.aim", "depth", "aim"], formula.Names);
        Assert.Equal(FormulaType.Quantity(Dimension.OfLength), formula.Type);
    }
}
