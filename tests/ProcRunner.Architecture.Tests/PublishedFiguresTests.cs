using System.Text.RegularExpressions;
using ProcRunner.Testing;

namespace ProcRunner.Architecture.Tests;

/// <summary>
/// docs/published-figures.md: each row names tests that are there, and each figure it sets in code type stands in the source of one
/// of them, or, where the examples of the calculations are named, on the page of the shop maths.
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
        Assert.InRange(Rows.Length, 30, 400);
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
                string sources = string.Concat(
                    TestsOf(row).Select(name => name.Split('.')[0]).Distinct().Select(Source)
                );
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

    // The method stands in the file of its class, and its attributes, from the last empty line on, make it a test.
    private static bool Exists(string name)
    {
        string[] parts = name.Split('.');
        string text = FileOf(parts[0]) is { } file ? File.ReadAllText(file) : "";
        Match method = Regex.Match(
            text,
            $@"\s(void|Task|Property) {parts[1]}\(",
            RegexOptions.None,
            TimeSpan.FromSeconds(1)
        );
        if (!method.Success)
        {
            return false;
        }

        string before = text[..method.Index];
        string attributes = before[(before.LastIndexOf("\n\n", StringComparison.Ordinal) + 1)..];
        return TestAttribute().IsMatch(attributes);
    }

    private static string Source(string testClass) =>
        testClass == "WorkExampleTests"
            ? File.ReadAllText(RepoRoot.PathOf("docs/shop-maths.md"))
            : File.ReadAllText(FileOf(testClass)!);

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

    [GeneratedRegex(@"\[(Fact|Theory|Property)\b", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex TestAttribute();
}
