using ProcRunner.ShopMath;
using ProcRunner.Testing;

namespace ProcRunner.Core.Tests.ShopMath.Work;

public class ShopMathsPageTests
{
    [Fact]
    public void The_page_is_what_the_tables_say() => Golden.MatchFile(ShopMathsPage.Write(), "docs/shop-maths.md");

    [Fact]
    public void It_works_an_example_of_every_function()
    {
        string page = ShopMathsPage.Write();
        foreach (WorkFunction function in WorkFunctions.All)
        {
            WorkStep step = WorkBench.Answer(function.Name, function.Examples[0].Given).Steps[0];
            Assert.Contains($"\n### {function.Name}\n", page, StringComparison.Ordinal);
            Assert.Contains(string.Join("\n    ", step.Lines), page, StringComparison.Ordinal);
        }
    }
}
