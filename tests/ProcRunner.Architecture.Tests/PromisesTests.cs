using System.Text.RegularExpressions;
using ProcRunner.Testing;

namespace ProcRunner.Architecture.Tests;

/// <summary>Each promise of docs/audit-trail.md names the tests that show it, and they are there.</summary>
public partial class PromisesTests
{
    private static readonly string[] Named =
    [
        .. TestName().Matches(File.ReadAllText(RepoRoot.PathOf("docs/audit-trail.md"))).Select(match => match.Value),
    ];

    public static TheoryData<string> Tests => [.. Named.Distinct().Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Tests))]
    public void Every_test_that_a_promise_names_exists(string name)
    {
        string[] parts = name.Trim('`').Split('.');
        string file = Assert.Single(
            Directory.GetFiles(RepoRoot.PathOf("tests"), parts[0] + ".cs", SearchOption.AllDirectories)
        );

        Assert.Matches($@"\[(Fact|Theory)[^;{{}}]*\s(void|Task) {parts[1]}\(", File.ReadAllText(file));
    }

    [Fact]
    public void Every_promise_names_one()
    {
        string[] rows =
        [
            .. File.ReadLines(RepoRoot.PathOf("docs/audit-trail.md"))
                .SkipWhile(line => !line.StartsWith("| against |", StringComparison.Ordinal))
                .Skip(2)
                .TakeWhile(line => line.StartsWith('|')),
        ];

        Assert.InRange(rows.Length, 15, 40);
        Assert.All(rows, row => Assert.Matches(TestName(), row.Split('|')[3]));
    }

    [GeneratedRegex("`[A-Z][A-Za-z]+Tests\\.[A-Z][A-Za-z_0-9]+`", RegexOptions.None, 1000)]
    private static partial Regex TestName();
}
