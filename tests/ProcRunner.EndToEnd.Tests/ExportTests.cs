using System.Text.Json;
using ProcRunner.Testing;

namespace ProcRunner.EndToEnd.Tests;

/// <summary>A job out of one shop and into another, and what a hostile file can't do on the way.</summary>
public sealed class ExportTests(ReleasedDemo demo) : IClassFixture<ReleasedDemo>
{
    [Fact]
    public void A_job_goes_to_another_shop_is_shown_there_and_can_t_be_worked_on()
    {
        using TempFolder folder = new();
        string file = Export(folder);
        BuiltProgram there = Elsewhere(folder);

        BuiltProgram.Ended import = there.Run("", "import", file);
        Assert.True(import.Status == 0, import.ToString());
        Assert.Contains("fingerprint", import.Output, StringComparison.Ordinal);
        Assert.Contains("DEMO  from elsewhere: Demo shop", there.Run("", "jobs").Output, StringComparison.Ordinal);
        Assert.Equal(0, there.Run("", "find", "demo").Status);

        BuiltProgram.Ended show = there.Run("", "show", "DEMO", "--store", Shop(folder));
        Assert.Equal(0, show.Status);
        Assert.Contains("FROM ELSEWHERE", show.Errors, StringComparison.Ordinal);
        Assert.Equal(demo.Program.Run("", "show", "DEMO").Output, show.Output);
        Assert.Equal(0, there.Run("", "verify", "DEMO", "--store", Shop(folder)).Status);

        string kept = Directory.GetFiles(Path.Combine(Shop(folder), "imported")).Single();
        byte[] good = File.ReadAllBytes(kept);
        BuiltProgram.Ended all = there.Run("", "verify");
        Assert.Equal(0, all.Status);
        Assert.Contains("Job DEMO, from Demo shop (invented): The trail holds", all.Output, StringComparison.Ordinal);
        foreach (int at in (int[])[2, good.Length / 2])
        {
            byte[] altered = [.. good];
            altered[at] ^= 1;
            File.WriteAllBytes(kept, altered);
            Assert.Equal(1, there.Run("", "verify").Status);
        }

        File.WriteAllBytes(kept, good);

        // The demo's stamp is kept for the demo: what can be asked for here is a job of any other stamp.
        string trail = Directory.GetFiles(Path.Combine(Shop(folder), "jobs")).FirstOrDefault() ?? "";
        Assert.Equal("", trail);
        Assert.Equal(0, there.Run("", "import", file).Status);
        Assert.Single(Directory.GetFiles(Path.Combine(Shop(folder), "imported")));
    }

    [Fact]
    public void The_file_tells_no_private_key_and_no_other_job()
    {
        using TempFolder folder = new();
        string text = File.ReadAllText(Export(folder));

        Assert.DoesNotContain("wrapped", text, StringComparison.Ordinal);
        Assert.DoesNotContain("sealed", text, StringComparison.Ordinal);
        Assert.Contains("\"certificate\"", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Export_writes_over_nothing_and_the_same_job_gives_the_same_file()
    {
        using TempFolder folder = new();
        byte[] first = File.ReadAllBytes(Export(folder));
        Assert.Equal(2, demo.Program.Run("", "export", "DEMO", "-o", folder["demo.job"]).Status);
        Assert.Equal(0, demo.Program.Run("", "export", "DEMO", "-o", folder["again.job"]).Status);

        Assert.Equal(first, File.ReadAllBytes(folder["again.job"]));
        Assert.Equal(1, demo.Program.Run("", "export", "NONE", "-o", folder["none.job"], "--store", demo.Store).Status);
        Assert.False(File.Exists(folder["none.job"]));
    }

    [Fact]
    public void The_shop_s_own_job_is_not_imported_and_an_altered_or_strange_file_neither()
    {
        using TempFolder folder = new();
        string file = Export(folder);
        BuiltProgram there = Elsewhere(folder);
        Assert.Equal(1, demo.Program.Run("", "import", file, "--store", demo.Store).Status);

        byte[] altered = File.ReadAllBytes(file);
        altered[altered.Length / 2] ^= 1;
        File.WriteAllBytes(folder["altered.job"], altered);
        File.WriteAllBytes(folder["cut.job"], altered[..(altered.Length / 3)]);
        File.WriteAllText(folder["empty.job"], "");
        File.WriteAllText(folder["other.job"], "{\"book\":1}\n");
        foreach (string bad in (string[])["altered.job", "cut.job", "empty.job", "other.job"])
        {
            Assert.Equal(1, there.Run("", "import", folder[bad]).Status);
            Assert.Equal(1, there.Run("", "verify", folder[bad]).Status);
        }

        Assert.Equal(2, there.Run("", "import", folder["not there"]).Status);
        Assert.False(Directory.Exists(Path.Combine(Shop(folder), "imported")));
    }

    [Theory]
    [InlineData("../../../escaped")]
    [InlineData("/tmp/escaped")]
    [InlineData("shop")]
    [InlineData("")]
    public void A_job_s_id_can_t_be_a_path(string id)
    {
        using TempFolder folder = new();
        string text = File.ReadAllText(Export(folder));
        string real = text.Split("\"job\":\"")[1].Split('"')[0];
        File.WriteAllText(folder["hostile.job"], text.Replace(real, id, StringComparison.Ordinal));
        BuiltProgram there = Elsewhere(folder);

        Assert.Equal(1, there.Run("", "import", folder["hostile.job"]).Status);
        Assert.False(Directory.Exists(Path.Combine(Shop(folder), "imported")));
    }

    [Fact]
    public void The_proof_code_finds_the_job_and_a_mistyped_one_is_told()
    {
        using TempFolder folder = new();
        string said = demo.Program.Run("", "verify", Export(folder)).Output;
        string code = said.Split("on paper: ")[1].Split('\n')[0].Trim();

        BuiltProgram.Ended found = demo.Program.Run("", "verify", "--code", code.ToLowerInvariant());
        Assert.Equal(0, found.Status);
        Assert.Contains("proof code of job DEMO", found.Errors, StringComparison.Ordinal);
        Assert.Contains("Job DEMO: The trail holds", found.Output, StringComparison.Ordinal);

        string wrong = (code[0] == 'A' ? "B" : "A") + code[1..];
        Assert.Equal(2, demo.Program.Run("", "verify", "--code", wrong).Status);
        string nobodys = ProcRunner.Trail.ProofCode.Of(ProcRunner.Trail.Digest.Of("nobody's"u8)).ToString();
        Assert.Equal(1, demo.Program.Run("", "verify", "--code", nobodys).Status);
    }

    [Fact]
    public void Decided_again_today_the_demo_job_comes_out_the_same()
    {
        BuiltProgram.Ended again = demo.Program.Run("", "verify", "DEMO", "--recompute");
        using JsonDocument json = JsonDocument.Parse(
            demo.Program.Run("", "verify", "DEMO", "--recompute", "--json").Output
        );

        Assert.Equal(0, again.Status);
        Assert.Contains("561 entries, 0 otherwise", again.Output, StringComparison.Ordinal);
        Assert.Equal(0, json.RootElement.GetProperty("otherwise").GetArrayLength());
    }

    private string Export(TempFolder folder)
    {
        string file = folder["demo.job"];
        BuiltProgram.Ended export = demo.Program.Run("", "export", "DEMO", "-o", file);
        Assert.True(export.Status == 0, export.ToString());
        return file;
    }

    private static string Shop(TempFolder folder) => Path.Combine(folder.Path, "data", "procrunner", "shop");

    private static BuiltProgram Elsewhere(TempFolder folder)
    {
        BuiltProgram program = new(folder["data"]);
        BuiltProgram.Ended found = program.Run(
            "112233\n112233\n",
            "people",
            "found",
            "Another shop (invented)",
            "ada",
            "A. Example (invented)"
        );
        Assert.True(found.Status == 0, found.ToString());
        return program;
    }
}
