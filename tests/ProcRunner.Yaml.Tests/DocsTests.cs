using System.Text;
using ProcRunner.Problems;
using ProcRunner.Procedures;
using ProcRunner.Procedures.Checks;
using ProcRunner.Testing;

namespace ProcRunner.Yaml.Tests;

/// <summary>The pages about the files say what is true: their examples load, and the table of codes is the program's.</summary>
public sealed class DocsTests
{
    [Fact]
    public void The_examples_of_both_pages_load_and_go_together()
    {
        Loaded<HeadSpec> head = Samples.LoadHead(ExampleOf("head-spec-format.md"));
        Loaded<Procedure> procedure = Samples.LoadProcedure(ExampleOf("procedure-format.md"));
        Assert.Empty(head.Problems);
        Assert.Empty(procedure.Problems);
        Assert.Empty(PlanCheck.Join(procedure.Value!, head.Value!, "example"));
    }

    [Fact]
    public void The_page_of_codes_is_the_table_of_the_program()
    {
        StringBuilder page = new("# Problem codes\n\n");
        page.Append("What `procrunner check` and every load of a file can report, each with file, line and column.\n");
        page.Append("A code, once given, never means anything else.\n\n| code | meaning |\n| --- | --- |\n");
        foreach ((string code, string meaning) in ProblemCodes.All)
        {
            page.Append(System.Globalization.CultureInfo.InvariantCulture, $"| {code} | {meaning} |\n");
        }

        Golden.MatchFile(page.ToString(), "docs/problem-codes.md");
    }

    [Fact]
    public void No_code_stands_in_the_table_twice() =>
        Assert.Equal(ProblemCodes.All.Count, ProblemCodes.All.Select(one => one.Code).Distinct().Count());

    private static string ExampleOf(string page)
    {
        string text = File.ReadAllText(RepoRoot.PathOf($"docs/{page}"));
        const string Begin = "```yaml\n";
        int begin = text.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length;
        return text[begin..text.IndexOf("```", begin, StringComparison.Ordinal)];
    }
}
