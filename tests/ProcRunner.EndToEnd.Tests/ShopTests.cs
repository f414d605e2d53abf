using System.Text.Json;
using ProcRunner.Testing;

namespace ProcRunner.EndToEnd.Tests;

public sealed class ShopTests : IDisposable
{
    private readonly TempFolder _folder = new();
    private readonly BuiltProgram _program;

    public ShopTests() => _program = new BuiltProgram(_folder.Path);

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_shop_is_founded_its_people_and_gauges_entered_and_a_job_opened_and_begun()
    {
        Assert.Equal(2, Do("", "open", "--head", "pump-four", "--procedure", "two-valve-iron").Status);
        Yes("made-up corner shop", Do("123456\n", "people", "found", "Made-up corner shop", "ada", "A. Da"));
        Yes("bo may sign", Do("4711\n123456\n", "people", "add", "bo", "B. Bo", "--role", "trainee"));
        Yes("bo is operator", Do("123456\n", "people", "role", "bo", "--role", "operator", "--by", "ada"));
        Yes("a new PIN", Do("4711\n2222\n", "people", "pin", "bo"));
        Yes(
            "calibrated until 2027-05-31",
            Do(
                "",
                "gauges",
                "add",
                "M7",
                "micrometer",
                "--kind",
                "micrometer",
                "--resolution",
                "0.0001 in",
                "--uncertainty",
                "0.00005 in",
                "--turn",
                "0.025 in",
                "--until",
                "2027-05-31",
                "--by",
                "bo"
            )
        );
        Yes("uncertainty 0.0001 in", Do("", "gauges", "change", "M7", "--uncertainty", "0.0001 in", "--by", "bo"));
        Yes(
            "in by 0.0005, grows deeper, shows twice the travel, counts from its last reset, preset to the measured value",
            Do(
                "",
                "gauges",
                "readout",
                "--unit",
                "in",
                "--step",
                "0.0005",
                "--shows",
                "diameter",
                "--counts-from",
                "last-reset",
                "--at-touch-off",
                "preset",
                "--by",
                "bo"
            )
        );
        Yes("mm by 0.01, grows deeper", Do("", "gauges", "readout", "--unit", "mm", "--step", "0.01", "--by", "bo"));
        Yes(
            "Job 1001 is open",
            Do("", "open", "--head", "pump-four", "--procedure", "two-valve-iron", "--customer", "nobody", "--by", "bo")
        );

        BuiltProgram.Ended run = Do("as the job says\nnone given\n", "run", "1001", "--plain", "--as", "bo");
        BuiltProgram.Ended over = Do("note mine now\n", "run", "1001", "--plain", "--as", "ada");
        using JsonDocument job = JsonDocument.Parse(Do("", "show", "1001", "--json").Output);
        using JsonDocument people = JsonDocument.Parse(Do("", "people", "--json").Output);

        Yes("teardown / head lost before", run);
        Yes("handed over to ada", over);
        Assert.Equal("nobody", job.RootElement.GetProperty("customer").GetString());
        Assert.Equal("ada", job.RootElement.GetProperty("notes")[0].GetProperty("by").GetString());
        Assert.Equal("operator", people.RootElement[1].GetProperty("role").GetString());
        BuiltProgram.Ended verified = Do("", "verify");
        Yes("Nothing is signed yet", verified);
        Assert.DoesNotContain("prove nothing", verified.Output, StringComparison.Ordinal);
        Yes("1001", Do("", "jobs"));
    }

    [Fact]
    public void What_would_leave_the_shop_without_a_lead_or_its_signatures_without_a_root_is_refused()
    {
        Yes("first lead", Do("123456\n", "people", "found", "Shop", "ada", "A. Da"));
        No("That is not the PIN of A. Da", Do("4711\n123457\n", "people", "add", "bo", "B. Bo"));
        No("four digits or more", Do("47\n123456\n", "people", "add", "bo", "B. Bo"));
        No("six digits or more", Do("4711\n123456\n", "people", "add", "bo", "B. Bo", "--role", "lead"));
        No("only lead", Do("123456\n", "people", "retire", "ada"));
        No("stays one", Do("123456\n", "people", "role", "ada", "--role", "operator"));
        Yes("cy may sign", Do("654321\n123456\n", "people", "add", "cy", "C. Y", "--role", "lead"));
        Yes("bo may sign", Do("4711\n654321\n", "people", "add", "bo", "B. Bo", "--by", "cy"));
        No("already", Do("4711\n123456\n", "people", "add", "bo", "B. Other", "--by", "ada"));
        No("six digits or more", Do("4711\n123456\n", "people", "role", "bo", "--role", "lead", "--by", "ada"));
        Yes("bo is lead", Do("471147\n123456\n", "people", "role", "bo", "--role", "lead", "--by", "ada"));
        Yes("cy is operator", Do("123456\n", "people", "role", "cy", "--role", "operator", "--by", "ada"));
        Yes("new PIN and a new key", Do("8642\n471147\n", "people", "reset", "cy", "--by", "bo"));
        No("Nobody resets their own", Do("864202\n471147\n", "people", "reset", "bo", "--by", "bo"));
        Yes("after 10 min", Do("471147\n", "people", "idle", "10", "--by", "bo"));
        Yes("Shop book", Do("", "verify"));
        No("Say who does it", Do("123456\n", "people", "retire", "bo"));
        No("That is not the PIN", Do("000000\n", "people", "retire", "bo", "--by", "ada"));
        Yes("can't sign any more", Do("123456\n", "people", "retire", "bo", "--by", "ada"));
        Assert.Equal(0, Do("", "verify").Status);
        Assert.Equal(2, Do("123456\n", "people", "found", "Shop", "ada", "A. Da").Status);
    }

    [Fact]
    public void Amounts_and_days_that_can_t_be_read_are_refused()
    {
        Yes("first lead", Do("123456\n", "people", "found", "Shop", "ada", "A. Da"));
        No(
            "no amount",
            Do("", "gauges", "add", "M1", "m", "--kind", "bore", "--resolution", "0.0001", "--uncertainty", "1 zoll")
        );
        No(
            "no day",
            Do(
                "",
                "gauges",
                "add",
                "M1",
                "m",
                "--kind",
                "bore",
                "--resolution",
                "1 um",
                "--uncertainty",
                "1 um",
                "--until",
                "31.5.2027"
            )
        );
        No(
            "one kind",
            Do("", "gauges", "add", "M1", "m", "--kind", "bore", "--resolution", "1 um", "--uncertainty", "1 lbf")
        );
        No("unit is one of length", Do("", "gauges", "readout", "--unit", "lbf", "--step", "1"));
        No("smallest step", Do("", "gauges", "readout", "--unit", "in"));
        No("no gauge M9", Do("", "gauges", "change", "M9", "--until", "none"));
        Assert.Equal("readout: not set up yet (procrunner gauges readout)\n", Do("", "gauges").Output);
    }

    [Fact]
    public void Wrong_calls_end_with_status_2()
    {
        string[][] calls =
        [
            ["bogus"],
            ["show"],
            ["run", "1001", "--as"],
            ["run", "1001"],
            ["jobs"],
            ["verify", "--store", _folder["nothing"]],
            ["people", "add", "bo", "B. Bo", "--role", "boss"],
            ["open", "--head", "no-such", "--procedure", "two-valve-iron"],
            ["open", "DEMO-9", "--head", "pump-four", "--procedure", "two-valve-iron"],
            ["@responses"],
        ];

        foreach (string[] call in calls)
        {
            BuiltProgram.Ended ended = Do("", call);
            Assert.True(ended.Status == 2, $"{string.Join(' ', call)}: {ended}");
            Assert.NotEmpty(ended.Errors);
            Assert.Empty(ended.Output);
        }
    }

    [Fact]
    public void A_stamp_that_is_not_there_is_answered_with_no()
    {
        Yes("first lead", Do("123456\n", "people", "found", "Shop", "ada", "A. Da"));

        No("no job stamped 7", Do("", "show", "7"));
        No("no job stamped 7", Do("", "verify", "7"));
        Assert.Equal("no jobs\n", Do("", "jobs").Output);
    }

    private BuiltProgram.Ended Do(string input, params string[] args) => _program.Run(input, args);

    private static void Yes(string told, BuiltProgram.Ended ended)
    {
        Assert.True(ended.Status == 0, ended.ToString());
        Assert.Contains(told, ended.Output, StringComparison.OrdinalIgnoreCase);
    }

    private static void No(string told, BuiltProgram.Ended ended)
    {
        Assert.True(ended.Status == 1, ended.ToString());
        Assert.Contains(told, ended.Errors, StringComparison.Ordinal);
    }
}
