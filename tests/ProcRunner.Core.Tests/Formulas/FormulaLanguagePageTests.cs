using ProcRunner.Formulas;
using ProcRunner.Testing;

namespace ProcRunner.Core.Tests.Formulas;

public class FormulaLanguagePageTests
{
    [Fact]
    public void The_page_of_the_language_is_what_the_tables_say() =>
        Golden.MatchFile(FormulaLanguagePage.Write(), "docs/formula-language.md");

    [Fact]
    public void The_page_names_every_function() =>
        Assert.All(
            FormulaFunctions.All,
            function =>
                Assert.Contains($"\n### {function.Name}\n", FormulaLanguagePage.Write(), StringComparison.Ordinal)
        );
}
