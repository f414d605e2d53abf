using System.Diagnostics;
using System.Runtime.InteropServices;
using System.Text.Json;
using ProcRunner.Testing;

namespace ProcRunner.EndToEnd.Tests;

/// <summary>The built program rehearses the procedure that comes with it on a few practice heads.</summary>
public sealed class RehearseVerbTests : IDisposable
{
    private const string Worn = """
        unit: in
        gauges:
          D1: {kind: depth, called: worn depth gauge, resolution: 0.0001, uncertainty: 0.0002, turn: 0.100, bias: 0.0002, spread: 0.0002, feel: 0.0002, wrong-turns: 0.02, not-zeroed: 0.02, not-zeroed-by: 0.002, dirty-seats: 0.05, dirt-by: 0.002}
          I1: {kind: indicator, resolution: 0.0001, uncertainty: 0.0001, pilot-bend: 0.0002}
        """;

    private readonly TempFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void The_same_seed_gives_the_same_report_on_any_number_of_cores()
    {
        BuiltProgram.Ended one = Rehearse("--heads", "40", "--compare", "20", "--cores", "1", "--seed", "9");
        BuiltProgram.Ended two = Rehearse("--heads", "40", "--compare", "20", "--cores", "2", "--seed", "9");

        Assert.Equal(0, one.Status);
        Assert.Equal(one.Output, two.Output);
        Assert.StartsWith("PRACTICE.", one.Output, StringComparison.Ordinal);
        foreach (
            string part in new[]
            {
                "How the jobs end",
                "Where heads are refused",
                "Released and truly out of limits",
                "Which reading's uncertainty matters most",
                "With one gauge's error taken away",
                "Chance of overshoot, by approach allowance and gauge",
                "What is true at the release",
                "recession I at the release",
            }
        )
        {
            Assert.Contains(part, one.Output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void As_json_it_says_the_same()
    {
        BuiltProgram.Ended ended = Rehearse("--heads", "40", "--alone", "--json");
        JsonElement answer = JsonDocument.Parse(ended.Output).RootElement;

        Assert.True(answer.GetProperty("practice").GetBoolean());
        Assert.Equal(40, answer.GetProperty("tally").GetProperty("heads").GetInt64());
        Assert.Equal(
            answer.GetProperty("tally").GetProperty("truly out").GetInt64(),
            answer.GetProperty("escapes").GetArrayLength()
        );
        Assert.Equal(0, answer.GetProperty("gauges").GetArrayLength());
    }

    [Fact]
    public void A_page_stands_beside_nothing_else()
    {
        string page = _folder["report.html"];
        BuiltProgram.Ended ended = Rehearse("--heads", "20", "--alone", "-o", page);

        Assert.Equal(0, ended.Status);
        Assert.EndsWith("</html>\n", File.ReadAllText(page), StringComparison.Ordinal);
        Assert.Equal([page], Directory.GetFiles(Path.GetDirectoryName(page)!, "*.*"));
    }

    // Depth gauge and pilot that err as gauges do on the floor cost heads that are in spec the first time.
    [Fact]
    public void Gauges_from_a_file_take_the_place_of_the_setups()
    {
        string file = _folder.Write("worn.yaml", Worn);
        long asTheyAre = FirstTime(Rehearse("--heads", "40", "--alone", "--json"));
        BuiltProgram.Ended worn = Rehearse("--heads", "40", "--alone", "--json", "--gauges", file);

        Assert.Equal(0, worn.Status);
        Assert.InRange(FirstTime(worn), 0, asTheyAre - 6);
    }

    [Theory]
    [InlineData("unit: in\ngauges:\n  D1: {kind: deepth, resolution: 0.0001, uncertainty: 0.0001}", ":3:3: ", "deepth")]
    [InlineData("unit: in\ngauges:\n  D1: {kind: depth, resolution: 0, uncertainty: 0.0001}", ":3:", "above 0")]
    [InlineData("unit: in\ngauges:\n  D1: {kind: depth, resolution: 1 lbf, uncertainty: 1 lbf}", ":3:3: ", "length")]
    [InlineData(
        "unit: in\ngauges:\n  D1: {kind: depth, resolution: 0.0001, uncertainty: 0.0001, spread: -1}",
        ":3:",
        "below 0"
    )]
    [InlineData(
        "unit: in\ngauges:\n  D1: {kind: depth, resolution: 0.0001, uncertainty: 0.0001, colour: red}",
        ":3:",
        "colour"
    )]
    [InlineData("gauges: [", ":", "YAML")]
    [InlineData("unit: in\ngauges: {}", ":2:9: ", "no gauge was read")]
    [InlineData(
        "unit: in\ngauges:\n  D1: {kind: depth, resolution: 0.0001, uncertainty: 0.0001}\n  D2: {kind: depth, resolution: 0.0001, uncertainty: 0.0001}",
        ":4:3: ",
        "a second gauge of the kind 'depth'"
    )]
    public void What_is_wrong_with_a_file_of_gauges_is_said_with_its_place(string text, string place, string word)
    {
        string file = _folder.Write("bad.yaml", text + "\n");
        BuiltProgram.Ended ended = Rehearse("--heads", "20", "--alone", "--gauges", file);

        Assert.Equal(2, ended.Status);
        Assert.Empty(ended.Output);
        Assert.Contains(file + place, ended.Errors, StringComparison.Ordinal);
        Assert.Contains(word, ended.Errors, StringComparison.Ordinal);
    }

    // What was read and what is wanted; nothing is played first, so that each is answered at once.
    [Theory]
    [InlineData("--heads 0 was read; from 1 to 1000000", "--heads", "0")]
    [InlineData("--heads -1 was read", "--heads", "-1")]
    [InlineData("--heads 1000000000 was read", "--heads", "1000000000")]
    [InlineData("--heads: '99999999999' was read; a whole number", "--heads", "99999999999")]
    [InlineData("--heads: 'many' was read; a whole number", "--heads", "many")]
    [InlineData("--compare: 'few' was read; a whole number", "--compare", "few")]
    [InlineData("--compare 11 was read; from 0 to the 10 heads", "--heads", "10", "--compare", "11")]
    [InlineData("--seed -1 was read", "--seed", "-1")]
    [InlineData("--seed: '99999999999999999999' was read; a whole number", "--seed", "99999999999999999999")]
    [InlineData("--cores -1 was read", "--cores", "-1")]
    [InlineData("report.docx' doesn't say which form", "-o", "report.docx")]
    [InlineData("There is no folder ", "-o", "/no/such/folder/report.html")]
    [InlineData("nowhere.yaml: ", "--gauges", "nowhere.yaml")]
    public void Wrong_usage_is_said(string said, params string[] more)
    {
        BuiltProgram.Ended ended = Rehearse(more);

        Assert.Equal(2, ended.Status);
        Assert.Empty(ended.Output);
        Assert.Contains(said, ended.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("nosuch", "pump-four", "There is no procedure 'nosuch'. With the program: two-valve-iron.")]
    [InlineData("two-valve-iron", "nosuch", "There is no head spec 'nosuch'. With the program: pump-four, pump-one.")]
    [InlineData("two-valve-iron", "pump-one", "There is no practice setup for two-valve-iron on pump-one.")]
    public void A_name_that_isnt_there_is_answered_with_those_that_are(string procedure, string head, string said)
    {
        BuiltProgram.Ended ended = new BuiltProgram(_folder.Path).Run("", ["rehearse", procedure, head]);

        Assert.Equal(2, ended.Status);
        Assert.Contains(said, ended.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_setup_that_is_named_serves_another_head()
    {
        BuiltProgram.Ended ended = new BuiltProgram(_folder.Path).Run(
            "",
            [
                "rehearse",
                "two-valve-iron",
                "pump-one",
                "--practice",
                "two-valve-iron-pump-four",
                "--heads",
                "20",
                "--alone",
                "--json",
            ]
        );

        Assert.Equal(0, ended.Status);
        Assert.Equal("pump-one", JsonDocument.Parse(ended.Output).RootElement.GetProperty("head").GetString());
    }

    [Fact]
    public void Stopped_in_the_middle_it_leaves_no_file()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        string page = _folder["stopped.html"];
        using Process process = Start("--heads", "1000000", "--alone", "-o", page);
        Assert.StartsWith("heads: ", process.StandardError.ReadLine(), StringComparison.Ordinal);
        Assert.Equal(0, Kill(process.Id, 2));

        Assert.True(process.WaitForExit(TimeSpan.FromSeconds(30)));
        Assert.Equal(1, process.ExitCode);
        Assert.Contains(
            "Stopped",
            process.StandardError.ReadToEnd() + process.StandardOutput.ReadToEnd(),
            StringComparison.Ordinal
        );
        Assert.Empty(Directory.GetFiles(_folder.Path, "*", SearchOption.AllDirectories));
    }

    private static long FirstTime(BuiltProgram.Ended ended) =>
        JsonDocument.Parse(ended.Output).RootElement.GetProperty("tally").GetProperty("first time").GetInt64();

    private BuiltProgram.Ended Rehearse(params string[] more) =>
        new BuiltProgram(_folder.Path).Run("", ["rehearse", "two-valve-iron", "pump-four", .. more]);

    private Process Start(params string[] more) =>
        new BuiltProgram(_folder.Path).Start(["rehearse", "two-valve-iron", "pump-four", .. more]);

    [DllImport("libc", EntryPoint = "kill")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Kill(int process, int signal);
}
