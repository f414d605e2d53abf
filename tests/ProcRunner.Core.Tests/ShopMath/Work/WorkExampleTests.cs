using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Work;

/// <summary>Every example of every calculation is what the program gives, and the table is whole.</summary>
public class WorkExampleTests
{
    public static TheoryData<string, string, string> Examples()
    {
        TheoryData<string, string, string> rows = [];
        foreach (WorkFunction function in WorkFunctions.All)
        {
            foreach (WorkExample example in function.Examples)
            {
                rows.Add(function.Name, example.Given, example.Gives);
            }
        }

        return rows;
    }

    public static TheoryData<string> Names => [.. WorkFunctions.All.Select(function => function.Name)];

    [Theory]
    [MemberData(nameof(Examples))]
    public void An_example_is_what_the_program_gives(string function, string given, string gives) =>
        WorkBench.Gives(function, given, gives);

    [Theory]
    [MemberData(nameof(Names))]
    public void A_calculation_says_all_about_itself(string name)
    {
        WorkFunction function = WorkFunctions.Find(name)!;

        Assert.Matches("^[a-z0-9]+(-[a-z0-9]+)*$", function.Name);
        Assert.NotEmpty(function.Examples);
        Assert.NotEmpty(function.Details);
        Assert.NotEmpty(function.Source);
        Assert.All(function.Parameters, one => Assert.Matches("^[a-z0-9]+(-[a-z0-9]+)*$", one.Name));
        Assert.All(function.Examples, one => Assert.NotEmpty(one.Source));
        Assert.Equal(function.Parameters.Count, function.Parameters.DistinctBy(one => one.Name).Count());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Its_working_fills_every_name_in(string name)
    {
        WorkFunction function = WorkFunctions.Find(name)!;
        WorkAnswer answer = WorkBench.Answer(function.Name, function.Examples[0].Given);

        Assert.NotEmpty(answer.Steps);
        Assert.All(answer.Steps, step => Assert.DoesNotContain('{', step.Formula + step.WithNumbers + step.Result));
    }

    // The wrong unit: a spring rate fits no parameter but a spring rate, for which a length is taken.
    [Theory]
    [MemberData(nameof(Names))]
    public void A_wrong_unit_or_none_is_refused_by_name(string name)
    {
        WorkFunction function = WorkFunctions.Find(name)!;
        foreach (WorkParameter parameter in function.Parameters)
        {
            Unit? usual = (parameter.Takes as WorkTakes.Amount)?.Unit ?? (parameter.Takes as WorkTakes.Amounts)?.Unit;
            if (usual is null)
            {
                continue;
            }

            string wrong = usual.Dimension == Dimension.OfSpringRate ? "1 mm" : "1 N/mm";
            Assert.Equal(parameter.Name, FaultWith(function, parameter, wrong).Argument);
            if (usual.Dimension != Dimension.None)
            {
                Assert.Contains("no unit", FaultWith(function, parameter, "1").ToString(), StringComparison.Ordinal);
            }
        }
    }

    private static ShopFault FaultWith(WorkFunction function, WorkParameter parameter, string text)
    {
        List<KeyValuePair<string, string>> given =
        [
            .. function.Examples[0].Arguments.Where(one => one.Key != parameter.Name),
            KeyValuePair.Create(parameter.Name, text),
        ];
        Assert.False(function.Answer(given).TryGet(out _, out ShopFault? fault), function.Name);
        return fault;
    }
}
