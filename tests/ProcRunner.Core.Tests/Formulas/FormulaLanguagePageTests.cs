using ProcRunner.Formulas;

namespace ProcRunner.Core.Tests.Formulas;

public class FormulaLanguagePageTests
{
    /// <summary>Set to 1, the page is written anew instead of being compared.</summary>
    private const string UpdateVariable = "PROCRUNNER_UPDATE_DOCS";

    [Fact]
    public void The_page_of_the_language_is_what_the_tables_say()
    {
        string path = Path.Combine(RepositoryRoot(), "docs", "formula-language.md");
        string page = FormulaLanguagePage.Write();
        if (Environment.GetEnvironmentVariable(UpdateVariable) == "1")
        {
            File.WriteAllText(path, page);
        }

        Assert.True(File.Exists(path), $"{path} is missing: run this test with {UpdateVariable}=1 to write it");
        Assert.Equal(File.ReadAllText(path), page);
    }

    [Fact]
    public void The_page_names_every_function() =>
        Assert.All(
            FormulaFunctions.All,
            function =>
                Assert.Contains($"\n### {function.Name}\n", FormulaLanguagePage.Write(), StringComparison.Ordinal)
        );

    private static string RepositoryRoot()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "ProcRunner.sln")))
        {
            folder = folder.Parent;
        }

        return Assert.IsType<DirectoryInfo>(folder).FullName;
    }
}
