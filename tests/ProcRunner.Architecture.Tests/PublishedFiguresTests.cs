using System.Text.RegularExpressions;
using ProcRunner.Testing;

namespace ProcRunner.Architecture.Tests;

/// <summary>
/// docs/published-figures.md: each row names tests that are there, and each figure it sets in code type stands in one of them, or,
/// where the examples of the calculations are named, on the page of the shop maths.
/// </summary>
public partial class PublishedFiguresTests
{
    private const string Page = "docs/published-figures.md";
    private const string Head = "| source | figures | test |";

    private static readonly string[] Rows =
    [
        .. File.ReadLines(RepoRoot.PathOf(Page)).Where(line => line.StartsWith('|') && line != Head && line[2] != '-'),
    ];

    [Fact]
    public void Its_tables_have_three_columns()
    {
        Assert.InRange(Rows.Length, 100, 400);
        Assert.All(Rows, row => Assert.True(Cells(row).Length == 3, row));
    }

    [Fact]
    public void Every_row_names_tests_that_exist() =>
        Assert.All(
            Rows,
            row =>
            {
                string[] named = TestsOf(row);
                Assert.True(named.Length > 0, row);
                Assert.All(named, name => Assert.True(Exists(name), $"{name} is no test: {row}"));
            }
        );

    [Fact]
    public void Every_figure_stands_where_its_row_says() =>
        Assert.All(
            Rows,
            row =>
            {
                string sources = string.Join('\n', TestsOf(row).Select(Source));
                IEnumerable<string> missing = Figure()
                    .Matches(Cells(row)[1])
                    .Select(match => match.Groups["figure"].Value)
                    .Where(figure => !StandsIn(sources, figure));
                Assert.True(!missing.Any(), $"{string.Join(", ", missing)} not in the tests of: {row}");
            }
        );

    // A figure is not found inside a longer one.
    [Theory]
    [InlineData("Printed(\"12.3\", load)", "12.3", true)]
    [InlineData("Printed(\"12.3046\", load)", "12.3", false)]
    [InlineData("Printed(\"112.3\", load)", "12.3", false)]
    public void A_figure_is_looked_for_whole(string source, string figure, bool stands) =>
        Assert.Equal(stands, StandsIn(source, figure));

    [Theory]
    [InlineData("PublishedFiguresTests.A_figure_is_looked_for_whole", true)]
    [InlineData("PublishedFiguresTests.StandsIn", false)]
    [InlineData("PublishedFiguresTests.A_figure", false)]
    [InlineData("NoSuchTests.A_figure_is_looked_for_whole", false)]
    public void A_test_is_told_from_what_is_none(string name, bool exists) => Assert.Equal(exists, Exists(name));

    private static string[] Cells(string row) => [.. row.Trim('|', ' ').Split('|').Select(cell => cell.Trim())];

    private static string[] TestsOf(string row) =>
        [.. TestName().Matches(Cells(row)[^1]).Select(match => match.Groups["name"].Value)];

    private static bool Exists(string name) => TestAttribute().IsMatch(TextOf(name));

    // The figures of the calculations' examples stand on the page that is written from them.
    private static string Source(string name) =>
        name.StartsWith("WorkExampleTests.", StringComparison.Ordinal)
            ? string.Join(
                '\n',
                Tree.LinesOf("docs/shop-maths.md").Where(line => line.StartsWith("- `", StringComparison.Ordinal))
            )
            : TextOf(name);

    // A method in the file of its class with what stands over it, from one empty line between members to the next; else nothing.
    private static string TextOf(string name)
    {
        string[] parts = name.Split('.');
        string text = FileOf(parts[0]) is { } file ? File.ReadAllText(file).ReplaceLineEndings("\n") : "";
        return BetweenMembers()
                .Split(text)
                .FirstOrDefault(member =>
                    Regex.IsMatch(
                        member,
                        $@"\s(void|Task|Property) {parts[1]}\(",
                        RegexOptions.ExplicitCapture,
                        TimeSpan.FromSeconds(1)
                    )
                )
            ?? "";
    }

    private static string? FileOf(string testClass) =>
        Directory.GetFiles(RepoRoot.PathOf("tests"), testClass + ".cs", SearchOption.AllDirectories).SingleOrDefault();

    private static bool StandsIn(string text, string figure) =>
        Regex.IsMatch(
            text,
            $@"(?<![0-9.]){Regex.Escape(figure)}(?![0-9])(?!\.[0-9])",
            RegexOptions.None,
            TimeSpan.FromSeconds(1)
        );

    [GeneratedRegex(
        "`(?<name>[A-Z][A-Za-z]+(Tests|Properties)\\.[A-Z][A-Za-z_0-9]+)`",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex TestName();

    [GeneratedRegex("`-?(?<figure>[0-9][0-9.]*)`", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Figure();

    [GeneratedRegex("\n\n(?=    [^ ])", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex BetweenMembers();

    [GeneratedRegex(@"\[(Fact|Theory|Property)\b", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex TestAttribute();
}
