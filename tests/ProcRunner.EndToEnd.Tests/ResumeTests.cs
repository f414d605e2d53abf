using System.Diagnostics;
using System.Text.RegularExpressions;
using ProcRunner.Testing;

namespace ProcRunner.EndToEnd.Tests;

public class ResumeTests(ReleasedDemo demo) : IClassFixture<ReleasedDemo>
{
    private static readonly Regex Different = new(
        """
        [0-9a-f]{64}|"(at|time)":"[^"]*Z"|"(signature|off)":"[^"]*"|"of":"[a-z2-7]{26}"
        """,
        RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture
    );

    // In the middle of a seat cut, between two passes.
    private static readonly int Half = Array.IndexOf(BuiltProgram.DemoLines, "@ seat cut / recession 2E") + 2;

    [Fact]
    public void Input_that_ends_half_way_is_taken_up_at_the_same_step()
    {
        using TempFolder folder = new();
        BuiltProgram program = new(folder.Path);
        BuiltProgram.Ended first = program.Run(
            BuiltProgram.Text(BuiltProgram.DemoLines[..Half]),
            "run",
            "DEMO",
            "--plain"
        );
        BuiltProgram.Ended second = program.Run(
            BuiltProgram.Text(BuiltProgram.DemoLines[Half..]),
            "run",
            "DEMO",
            "--plain"
        );

        Assert.Equal(0, first.Status);
        Assert.Equal(0, second.Status);
        Assert.Contains("Recorded last", second.Output, StringComparison.Ordinal);
        Assert.StartsWith(LastPrompt(first.Output), FirstPrompt(second.Output), StringComparison.Ordinal);
        Assert.Equal(Told(demo.Trail), Told(TrailIn(folder)));
    }

    [Fact]
    public void A_killed_program_is_taken_up_at_the_same_step()
    {
        using TempFolder folder = new();
        BuiltProgram program = new(folder.Path);
        using (Process process = program.Start("run", "DEMO", "--plain"))
        {
            // "why" writes nothing down; when it is answered, every line before it was acknowledged.
            process.StandardInput.Write(BuiltProgram.Text([.. BuiltProgram.DemoLines[..Half], "why"]));
            process.StandardInput.Flush();
            string? line;
            do
            {
                line = process.StandardOutput.ReadLine();
            } while (line is not null && !line.Contains("  target: ", StringComparison.Ordinal));

            Assert.NotNull(line);
            process.Kill();
            process.WaitForExit();
        }

        BuiltProgram.Ended second = program.Run(
            BuiltProgram.Text(BuiltProgram.DemoLines[Half..]),
            "run",
            "DEMO",
            "--plain"
        );

        Assert.Equal(0, second.Status);
        Assert.Equal(Told(demo.Trail), Told(TrailIn(folder)));
        Assert.Equal(0, program.Run("", "verify").Status);
    }

    [Fact]
    public void A_second_program_on_the_same_store_is_kept_out_and_told_by_whom()
    {
        using TempFolder folder = new();
        BuiltProgram program = new(folder.Path);
        using Process first = program.Start("run", "DEMO", "--plain");
        while (first.StandardOutput.ReadLine() is { } line && !line.Contains("one of:", StringComparison.Ordinal)) { }

        BuiltProgram.Ended second = program.Run("", "run", "DEMO", "--plain");
        BuiltProgram.Ended reader = program.Run("", "jobs");
        first.StandardInput.Close();
        first.WaitForExit();

        Assert.Equal(2, second.Status);
        Assert.Contains("The store is in use by run DEMO (process ", second.Errors, StringComparison.Ordinal);
        Assert.Empty(second.Output);
        Assert.Equal(0, reader.Status);
        Assert.Equal(0, first.ExitCode);
    }

    [Theory]
    [InlineData("\u001b[2J\u001b]0;owned\u0007")]
    [InlineData("\u009b31mred\u009c")]
    [InlineData("abc\u202edcb\u2066x\u200f")]
    [InlineData("zero\u200bwidth\u00ad")]
    public void Hostile_text_is_kept_and_never_reaches_the_terminal(string text)
    {
        using TempFolder folder = new();
        BuiltProgram program = new(folder.Path);
        string lines = $"note {text}\n{text}\nhold because {text}\n";

        BuiltProgram.Ended run = program.Run(lines, "run", "DEMO", "--plain");
        BuiltProgram.Ended held = program.Run(
            $"note {text}\nhold because {text}\n?\nwhy\n@ {text}\n",
            "run",
            "DEMO",
            "--plain"
        );
        BuiltProgram.Ended show = program.Run("", "show", "DEMO");
        BuiltProgram.Ended json = program.Run("", "show", "DEMO", "--json");
        BuiltProgram.Ended jobs = program.Run("", "jobs");
        BuiltProgram.Ended bad = program.Run("", "run", text);

        Assert.Equal(1, run.Status);
        Assert.Equal(1, held.Status);
        Assert.Contains("\\u", show.Output, StringComparison.Ordinal);
        Assert.Equal(2, bad.Status);
        Assert.Empty(Unprintable.In(run.All + held.All + show.All + jobs.All + bad.All));
        Assert.DoesNotContain(json.Output, c => c is '\u001b' or '\u009b' or '\u202e');
    }

    private static string TrailIn(TempFolder folder) =>
        Directory.GetFiles(folder["procrunner/demo-shop/jobs"], "*.trail").Single();

    private static string LastPrompt(string output) => output.TrimEnd().Split("\n\n")[^1];

    private static string FirstPrompt(string output) =>
        output.Split("\n\n").First(part => part.StartsWith("seat cut / recession", StringComparison.Ordinal));

    // A trail without what differs from run to run: times, digests, signatures, ids.
    private static string[] Told(string trail) =>
        [.. File.ReadAllLines(trail).Select(line => Different.Replace(line.Split('\t')[0], "…"))];
}
