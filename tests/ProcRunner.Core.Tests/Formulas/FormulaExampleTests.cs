using ProcRunner.Formulas;

namespace ProcRunner.Core.Tests.Formulas;

public class FormulaExampleTests
{
    public static TheoryData<string, string> Examples()
    {
        TheoryData<string, string> rows = [];
        foreach (FormulaExample example in FormulaFunctions.All.SelectMany(function => function.Examples))
        {
            rows.Add(example.Formula, example.Result);
        }

        return rows;
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void An_example_of_the_help_is_what_the_program_gives(string formula, string result) =>
        Bench.Empty.Gives(result, formula);

    [Fact]
    public void Every_function_is_shown_by_an_example_that_calls_it() =>
        Assert.All(
            FormulaFunctions.All,
            function =>
                Assert.Contains(
                    function.Examples,
                    example => example.Formula.StartsWith(function.Name + "(", StringComparison.Ordinal)
                )
        );
}
