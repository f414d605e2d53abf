using System.Text.Json;
using ProcRunner.Testing;

namespace ProcRunner.EndToEnd.Tests;

/// <summary>A practice job taken through every verb that shows one: each says that it is practice, and none makes more of it.</summary>
public sealed class PracticeMarkTests : IDisposable
{
    private const string Stamp = "READING-GAUGES-FINCH";
    private readonly TempFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Every_verb_and_every_form_of_the_record_says_that_it_is_practice()
    {
        string room = Room();
        Assert.Contains("PRACTICE: worth nothing to a customer.", Run("show", Stamp).Output, StringComparison.Ordinal);
        Assert.True(Flag(Run("show", Stamp, "--json").Output));
        Assert.Contains("PRACTICE, ", Run("jobs").Output, StringComparison.Ordinal);
        Assert.Contains("PRACTICE, ", Run("find", "finch").Output, StringComparison.Ordinal);
        Assert.Contains("practice isn't counted", Run("trend", "head lost before").All, StringComparison.Ordinal);
        Assert.Contains(
            "PRACTICE: worth nothing to a customer.",
            Run("run", Stamp, "--plain", "--as", "finch").Output,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "<div class=\"across\" aria-hidden=\"true\"><span>PRACTICE<",
            Record("html"),
            StringComparison.Ordinal
        );
        Assert.Contains("no sign-off in it proves anything", Record("html"), StringComparison.Ordinal);
        Assert.Contains("PRACTICE: worth nothing to a customer", Record("csv"), StringComparison.Ordinal);
        Assert.True(Flag(Record("json")));

        BuiltProgram.Ended Run(params string[] words) => Program([.. words, "--store", room]);
        string Record(string form)
        {
            string file = _folder[$"record.{form}"];
            File.Delete(file);
            Assert.Equal(0, Run("record", Stamp, "-o", file).Status);
            return File.ReadAllText(file);
        }
    }

    // In the room, out of a copy under another name, out of a backup, out of an exported file and where that was imported.
    [Fact]
    public void Verify_says_that_its_sign_offs_are_worth_nothing_wherever_it_was_taken()
    {
        string room = Room();
        string shop = _folder["shop"];
        string file = _folder["job.prjob"];
        Assert.Equal(0, Program("backup", _folder["backup"], "--store", room).Status);
        Directory.Move(room, _folder["Bent Valve Works"]);
        room = _folder["Bent Valve Works"];
        Assert.Equal(0, Program("export", Stamp, "-o", file, "--store", room).Status);
        Assert.Equal(0, Program("import", file, "--store", Shop(shop)).Status);

        foreach (string[] of in new[] { ["--store", room], ["--store", _folder["backup"]], new[] { file } })
        {
            BuiltProgram.Ended ended = Program(["verify", .. of]);
            Assert.Equal(0, ended.Status);
            Assert.Contains("ITS SIGN-OFFS ARE WORTH NOTHING", ended.Output, StringComparison.Ordinal);
        }

        Assert.Contains("A PRACTICE ROOM", Program("verify", "--store", room).Output, StringComparison.Ordinal);
        Assert.Contains(
            "ITS SIGN-OFFS ARE WORTH NOTHING",
            Program("verify", "--store", shop).All,
            StringComparison.Ordinal
        );
        Assert.Contains("PRACTICE, from elsewhere", Program("jobs", "--store", shop).Output, StringComparison.Ordinal);
        Assert.NotEqual(0, Program("run", Stamp, "--plain", "--as", "moss", "--store", shop).Status);
    }

    private string Room()
    {
        string room = _folder["room"];
        Assert.Contains(
            "PRACTICE. ",
            Program("practice", "reading gauges", "--plain", "--store", room).Output,
            StringComparison.Ordinal
        );
        return room;
    }

    private string Shop(string folder)
    {
        Assert.Equal(0, Program("run", "DEMO", "--plain", "--store", folder).Status);
        return folder;
    }

    private static bool Flag(string json) => JsonDocument.Parse(json).RootElement.GetProperty("practice").GetBoolean();

    private BuiltProgram.Ended Program(params string[] words) => new BuiltProgram(_folder["data"]).Run("", words);
}
