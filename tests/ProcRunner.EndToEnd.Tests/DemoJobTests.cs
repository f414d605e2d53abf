using System.Globalization;
using System.Text.Json;
using ProcRunner.Testing;

namespace ProcRunner.EndToEnd.Tests;

public class DemoJobTests(ReleasedDemo demo) : IClassFixture<ReleasedDemo>
{
    // From the figures of the demo (procedures/demo/README.md, "Final, place by place"): deepest recession after the
    // skim, stem height, vacuum before assembly, installed height.
    private static readonly (string Position, decimal[] Finals)[] Finals =
    [
        ("1I", [.0550m, 1.560m, 23m, 1.700m]),
        ("1E", [.0580m, 1.560m, 22m, 1.697m]),
        ("2I", [.0549m, 1.559m, 23m, 1.699m]),
        ("2E", [.0581m, 1.561m, 24m, 1.698m]),
        ("3I", [.0551m, 1.560m, 22m, 1.700m]),
        ("3E", [.0580m, 1.561m, 24m, 1.697m]),
        ("4I", [.0552m, 1.558m, 23m, 1.697m]),
        ("4E", [.0579m, 1.559m, 22m, 1.696m]),
    ];

    private static readonly string[] Names = ["recession", "stem height", "seat vacuum", "installed height"];

    // The insert that 3E got after it was cut too deep, as the file of entries says it.
    private static string Insert
    {
        get
        {
            int at = Array.LastIndexOf(BuiltProgram.DemoLines, "@ seat counterbore / seat insert 3E");
            return BuiltProgram.DemoLines[at + 1];
        }
    }

    [Fact]
    public void The_file_of_entries_takes_the_demo_head_from_teardown_to_release()
    {
        Assert.Equal(0, demo.Run.Status);
        string[] last = demo.Run.Output.TrimEnd().Split('\n')[^2..];
        Assert.Equal("  RELEASED by T. Moss (demo)", last[0]);
        Assert.StartsWith("  proof code, for the paper: ", last[1], StringComparison.Ordinal);
        Assert.Empty(demo.Run.Errors);
    }

    [Fact]
    public void The_story_has_its_refusals_its_rechecks_and_its_voided_zero()
    {
        foreach (
            string told in new[]
            {
                "least guide fit 0.0013 in OUT OF SPEC",
                "seat vacuum 17 inHg: OUT OF SPEC",
                "recession 0.0697 in: OUT OF SPEC",
                "recheck (cutter edge changed)",
                "recheck (skim taken was cut)",
            }
        )
        {
            Assert.Contains(told, demo.Run.Output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Show_gives_every_position_its_final_values()
    {
        using JsonDocument job = JsonDocument.Parse(demo.Program.Run("", "show", "DEMO", "--json").Output);
        string text = demo.Program.Run("", "show", "demo").Output;
        JsonElement[] values = [.. job.RootElement.GetProperty("values").EnumerateArray()];

        foreach ((string position, decimal[] finals) in Finals)
        {
            string section = text.Split($"== {position} ==")[1].Split("\n== ")[0];
            for (int i = 0; i < Names.Length; i++)
            {
                JsonElement value = values.Single(v =>
                    v.GetProperty("at").GetString() == position && v.GetProperty("name").GetString() == Names[i]
                );
                string number = value.GetProperty("value").GetProperty("v").GetString()!;
                Assert.Equal(finals[i], decimal.Parse(number, CultureInfo.InvariantCulture));
                Assert.Equal("in limits", value.GetProperty("verdict").GetString());
                string line = section.Split('\n').Single(l => l.StartsWith($"{Names[i]}  ", StringComparison.Ordinal));
                Assert.Contains($" {number} ", line, StringComparison.Ordinal);
                Assert.Contains("in limits; by ", line, StringComparison.Ordinal);
            }
        }

        Assert.Equal("released", job.RootElement.GetProperty("state").GetString());
        Assert.Equal(0, job.RootElement.GetProperty("open").GetArrayLength());
    }

    [Fact]
    public void Show_gives_parts_decisions_and_sign_offs()
    {
        string text = demo.Program.Run("", "show", "DEMO").Output;

        Assert.Contains($"3E: seat insert {Insert}", text, StringComparison.Ordinal);
        Assert.Contains("seat, 3E: new insert", text, StringComparison.Ordinal);
        Assert.Contains("approved by T. Moss (demo)", text, StringComparison.Ordinal);
        Assert.Contains("measured by A. Finch (demo), T. Moss (demo) beside", text, StringComparison.Ordinal);
        Assert.Contains("released by T. Moss (demo)", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Find_finds_the_job_by_stamp_customer_part_number_and_lot()
    {
        string[] numberAndLot = Insert.Split(", lot ");
        string[] texts =
        [
            "DEMO",
            "demo",
            "lower field",
            "stem seal",
            .. numberAndLot,
            numberAndLot[1].ToLowerInvariant(),
        ];
        foreach (string text in texts)
        {
            BuiltProgram.Ended found = demo.Program.Run("", "find", text);

            Assert.Equal(0, found.Status);
            Assert.Contains("DEMO   released", found.Output, StringComparison.Ordinal);
        }

        using JsonDocument json = JsonDocument.Parse(demo.Program.Run("", "find", texts[^1], "--json").Output);
        Assert.Equal("DEMO", json.RootElement[0].GetProperty("stamp").GetString());
    }

    [Fact]
    public void Find_answers_no_when_there_is_none() =>
        Assert.Equal(1, demo.Program.Run("", "find", "no such lot").Status);

    [Fact]
    public void Jobs_lists_the_job()
    {
        BuiltProgram.Ended jobs = demo.Program.Run("", "jobs");

        Assert.Equal(0, jobs.Status);
        Assert.Contains("DEMO   released  nothing: released", jobs.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Verify_says_that_trail_and_signatures_hold_and_that_the_demo_shop_proves_nothing()
    {
        BuiltProgram.Ended verified = demo.Program.Run("", "verify", "DEMO");

        Assert.Equal(0, verified.Status);
        int lines = File.ReadAllLines(demo.Trail).Length;
        Assert.Contains(
            string.Create(CultureInfo.InvariantCulture, $"Job DEMO: The trail holds: {lines} entries"),
            verified.Output,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "Signatures checked against their signers' keys: 13, all good.",
            verified.Output,
            StringComparison.Ordinal
        );
        Assert.Contains("its sign-offs prove nothing", verified.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(177)]
    [InlineData(300)]
    [InlineData(561)]
    public void Verify_names_the_entry_in_which_a_byte_was_flipped(int entry)
    {
        using TempFolder folder = new();
        demo.CopyTo(folder["shop"]);
        string trail = Directory.GetFiles(folder["shop/jobs"]).Single();
        byte[] bytes = File.ReadAllBytes(trail);
        int at = 0;
        for (int line = 1; line < entry; at++)
        {
            line += bytes[at] == '\n' ? 1 : 0;
        }

        bytes[at + 20] ^= 1;
        File.WriteAllBytes(trail, bytes);

        BuiltProgram.Ended verified = demo.Program.Run("", "verify", "DEMO", "--store", folder["shop"]);

        Assert.Equal(1, verified.Status);
        Assert.Contains(
            string.Create(CultureInfo.InvariantCulture, $"Job DEMO: IT DOESN'T HOLD. Entry {entry} "),
            verified.Output,
            StringComparison.Ordinal
        );
        Assert.Equal(1, demo.Program.Run("", "verify", "--store", folder["shop"]).Status);
    }

    [Fact]
    public void A_released_job_takes_nothing_more_and_the_demo_begins_anew()
    {
        using TempFolder folder = new();
        demo.CopyTo(folder["shop"]);

        BuiltProgram.Ended run = demo.Program.Run("note again\n", "run", "DEMO", "--store", folder["shop"]);

        Assert.Equal(0, run.Status);
        Assert.StartsWith("Job DEMO-2:", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("record.html", "<!DOCTYPE html>")]
    [InlineData("record.pdf", "%PDF-1.")]
    [InlineData("RECORD.CSV", "kind,about,at,value")]
    [InlineData("record.json", "{\"advice\":")]
    public void Record_writes_the_form_that_the_files_ending_picks(string name, string begins)
    {
        using TempFolder folder = new();

        BuiltProgram.Ended written = demo.Program.Run("", "record", "demo", "-o", folder[name]);

        Assert.Equal(0, written.Status);
        Assert.Contains($"Written: {folder[name]}", written.Output, StringComparison.Ordinal);
        Assert.StartsWith(begins, File.ReadAllText(folder[name]), StringComparison.Ordinal);
        Assert.Equal([folder[name]], Directory.GetFiles(folder.Path));
    }

    [Fact]
    public void Record_says_what_it_cant_do()
    {
        using TempFolder folder = new();
        BuiltProgram.Ended ending = demo.Program.Run("", "record", "DEMO", "-o", folder["record.doc"]);
        BuiltProgram.Ended stamp = demo.Program.Run("", "record", "DEMO-9", "-o", folder["record.pdf"]);
        BuiltProgram.Ended nowhere = demo.Program.Run("", "record", "DEMO", "-o", folder["no/such/record.pdf"]);

        Assert.Equal(2, ending.Status);
        Assert.Contains(".html a page for screens", ending.Errors, StringComparison.Ordinal);
        Assert.Equal(1, stamp.Status);
        Assert.Equal(2, nowhere.Status);
        Assert.Empty(Directory.GetFileSystemEntries(folder.Path));
    }

    [Fact]
    public void No_record_is_made_of_a_trail_that_was_altered()
    {
        using TempFolder folder = new();
        demo.CopyTo(folder["shop"]);
        string trail = Directory.GetFiles(folder["shop/jobs"]).Single();
        File.WriteAllText(trail, File.ReadAllText(trail).Replace("0.0581 in", "0.0571 in", StringComparison.Ordinal));

        BuiltProgram.Ended ended = demo.Program.Run(
            "",
            "record",
            "DEMO",
            "-o",
            folder["r.pdf"],
            "--store",
            folder["shop"]
        );

        Assert.Equal(1, ended.Status);
        Assert.Contains(
            "No record is made of a trail that doesn't hold. Entry ",
            ended.Errors,
            StringComparison.Ordinal
        );
        Assert.False(File.Exists(folder["r.pdf"]));
    }

    [Fact]
    public void Nothing_that_it_prints_can_move_a_cursor()
    {
        string all = string.Concat(
            demo.Run.All,
            demo.Program.Run("", "show", "DEMO").All,
            demo.Program.Run("", "verify").All,
            demo.Program.Run("", "jobs").All,
            demo.Program.Run("", "people").All,
            demo.Program.Run("", "gauges").All,
            demo.Program.Run("", "--help").All
        );

        Assert.Empty(Unprintable.In(all));
    }
}
