using ProcRunner.Testing;
using Xunit.Sdk;

namespace ProcRunner.Architecture.Tests;

public class GoldenTests
{
    [Fact]
    public void A_text_like_the_committed_file_passes()
    {
        using TempFolder folder = new();

        Golden.MatchFile("one\r\ntwo\n", folder.Write("page.md", "one\ntwo\n"));
    }

    [Theory]
    [InlineData("one\n2\n", "line 2:\n- two\n+ 2\n")]
    [InlineData("one\ntwo\nthree\n", "line 3:\n- \n+ three\n")]
    [InlineData("one\ntwo", "line 3:\n- \n+ (the end)\n")]
    [InlineData("", "line 1:\n- one\n+ \n")]
    public void The_first_line_that_differs_is_named(string made, string expected)
    {
        using TempFolder folder = new();
        string page = folder.Write("page.md", "one\ntwo\n");

        XunitException exception = Assert.ThrowsAny<XunitException>(() => Golden.MatchFile(made, page));

        Assert.Contains(expected, exception.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_was_never_committed_fails()
    {
        using TempFolder folder = new();

        Assert.ThrowsAny<XunitException>(() => Golden.MatchFile("text", folder["page.md"]));
        Assert.False(File.Exists(folder["page.md"]));
    }

    [Fact]
    public void A_snapshot_that_was_never_committed_fails()
    {
        using TempFolder folder = new();

        Assert.ThrowsAny<XunitException>(() => Golden.Match("text", "a.txt", folder["SomeTests.cs"]));
    }

    [Fact]
    public void A_snapshot_is_compared_to_the_letter()
    {
        using TempFolder folder = new();
        folder.Write("__snapshots__/a.txt", "é \"x\"\n  y\n");

        Golden.Match("é \"x\"\n  y\n", "a.txt", folder["SomeTests.cs"]);
        Assert.ThrowsAny<Exception>(() => Golden.Match("é \"x\"\n y\n", "a.txt", folder["SomeTests.cs"]));
    }
}
