using System.Text.RegularExpressions;

namespace ProcRunner.Architecture.Tests;

/// <summary>What may stand in the repository.</summary>
public class TreeTests
{
    private const int MostLines = 500;

    private const RegexOptions Plain =
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking;

    // The words are taken apart here, so that this file passes too.
    private static readonly Regex Unfinished = new(@"\b(TO" + @"DO|FIX" + @"ME|XX" + @"X)\b", Plain);

    private static readonly Regex NotImplemented = new(@"\bNotImplemented" + "Exception", Plain);

    private static readonly Regex PathOfAMachine = new(
        "(^|[^A-Za-z0-9_.])(/wo" + "rk/|/ho" + "me/|/ro" + "ot/|/Use" + @"rs/|[A-Z]:\\Use" + "rs)",
        Plain
    );

    private static readonly Regex RegistryHost = new(
        @"https?://[^\s/]*(nuget|npm|pypi|artifactory|registry)",
        Plain | RegexOptions.IgnoreCase
    );

    [Fact]
    public void The_top_level_holds_eight_things_at_most() =>
        Assert.Empty(
            Tree.Top.Except([
                "README.md",
                "DEVELOPERS.md",
                "ProcRunner.sln",
                "src",
                "tests",
                "procedures",
                "docs",
                "LICENSE",
            ])
        );

    [Fact]
    public void No_source_file_is_too_long() =>
        Assert.All(Tree.Sources, file => Assert.True(Tree.LinesOf(file).Length <= MostLines, file));

    [Fact]
    public void Nothing_is_marked_as_unfinished()
    {
        Assert.Empty(Found(Tree.Files.Where(IsText), Unfinished));
        Assert.Empty(Found(Tree.Sources, NotImplemented));
    }

    [Fact]
    public void No_file_names_a_path_of_one_machine() => Assert.Empty(Found(Tree.Files, PathOfAMachine));

    [Fact]
    public void No_file_names_the_host_of_a_package_registry() => Assert.Empty(Found(Tree.Files, RegistryHost));

    [Fact]
    public void The_files_looked_at_are_those_of_the_repository()
    {
        Assert.Contains("LICENSE", Tree.Files);
        Assert.All(Tree.Sources, file => Assert.True(IsText(file), file));
        Assert.Contains("docs/formula-language.md", Tree.Files);
        Assert.Contains("src/ProcRunner.Core/Runs/RunState.cs", Tree.Sources);
        Assert.Contains("tests/ProcRunner.Architecture.Tests/TreeTests.cs", Tree.Sources);
    }

    // In packed pictures any three letters stand somewhere by chance.
    private static bool IsText(string file) =>
        !Tree.LinesOf(file).Any(line => line.Contains('\0', StringComparison.Ordinal));

    private static IEnumerable<string> Found(IEnumerable<string> files, Regex pattern) =>
        files.SelectMany(file =>
            Tree.LinesOf(file)
                .Select((text, index) => (text, place: $"{file}:{(index + 1).ToString(null, null)}"))
                .Where(line => pattern.IsMatch(line.text))
                .Select(line => $"{line.place}: {line.text}")
        );
}
