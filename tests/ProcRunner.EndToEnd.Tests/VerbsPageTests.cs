using System.Text;
using ProcRunner.Testing;

namespace ProcRunner.EndToEnd.Tests;

public class VerbsPageTests
{
    private static readonly string[][] Verbs =
    [
        [],
        ["run"],
        ["open"],
        ["jobs"],
        ["find"],
        ["show"],
        ["compare"],
        ["trend"],
        ["recall"],
        ["backup"],
        ["record"],
        ["verify"],
        ["export"],
        ["import"],
        ["people"],
        ["people", "found"],
        ["people", "add"],
        ["people", "role"],
        ["people", "pin"],
        ["people", "retire"],
        ["gauges"],
        ["gauges", "add"],
        ["gauges", "change"],
        ["gauges", "readout"],
        ["check"],
        ["practice"],
        ["rehearse"],
        ["work"],
    ];

    [Fact]
    public void The_page_is_what_the_program_says_of_its_verbs()
    {
        using TempFolder folder = new();
        BuiltProgram program = new(folder.Path);
        StringBuilder page = new(Before);
        foreach (string[] verb in Verbs)
        {
            BuiltProgram.Ended help = program.Run("", [.. verb, "--help"]);
            Assert.Equal(0, help.Status);
            page.Append("\n## procrunner ").AppendJoin(' ', verb).Append("\n\n```text\n");
            page.AppendJoin('\n', help.Output.TrimEnd().Split('\n').Select(line => line.TrimEnd())).Append("\n```\n");
        }

        Golden.MatchFile(
            page.ToString().Replace("## procrunner \n", "## procrunner\n", StringComparison.Ordinal),
            "docs/verbs.md"
        );
    }

    private const string Before = """
        # Verbs

        What `--help` says of each verb. With no verb the program works on the demo job, an invented head in an invented shop.

        Exit status: 0 yes, done; 1 the answer is no: refused, not found, a trail that doesn't hold; 2 wrong usage or
        environment, said on standard error. `--json` gives one line of canonical JSON (RFC 8785); an amount in it is a map of
        its number as a text, `v`, and its unit, `u`.

        PINs never stand on a command line: they are asked without being shown, or read from standard input, one a line, in
        the order in which they are asked: a person's own new or old PIN first, the lead's last. In line mode a PIN may stand
        in the line, for files of entries; see [line mode](line-mode.md).

        """;
}
