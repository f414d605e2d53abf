using ProcRunner.Testing;

namespace ProcRunner.EndToEnd.Tests;

/// <summary>A few values moved just past their limits, through the built program from the first line on.</summary>
public class MovedValueTests
{
    [Theory]
    [InlineData("@ seat cut / planned skim head", ".0121", "planned skim 0.0121 in is over the high limit 0.0120 in")]
    [InlineData("@ seat cut / margin 1I", ".0399", "margin 0.0399 in is under the low limit 0.0400 in")]
    [InlineData(
        "@ surface / recession after the deck 4E",
        ".0579 .0576 .0641 .0578",
        "is over the high limit 0.0640 in"
    )]
    [InlineData("@ assemble / final vacuum 4E", "19.9", "final vacuum 19.9 inHg is under the low limit 20.0 inHg")]
    public void A_value_past_its_limit_stops_the_run_with_status_1_and_names_its_line(
        string at,
        string value,
        string told
    )
    {
        string[] lines = [.. BuiltProgram.DemoLines];
        int index = Array.IndexOf(lines, at) + 1;
        lines[index] = value;
        using TempFolder folder = new();
        BuiltProgram program = new(folder.Path);

        BuiltProgram.Ended run = program.Run(BuiltProgram.Text(lines), "run", "DEMO", "--plain");

        Assert.Equal(1, run.Status);
        string last = run.Output.TrimEnd().Split('\n')[^1];
        string line = (index + 1).ToString(System.Globalization.CultureInfo.InvariantCulture);
        Assert.StartsWith($"Stopped at line {line}: ", last, StringComparison.Ordinal);
        Assert.Contains(told, last, StringComparison.Ordinal);
        Assert.Contains("DEMO   open", program.Run("", "jobs").Output, StringComparison.Ordinal);
    }
}
