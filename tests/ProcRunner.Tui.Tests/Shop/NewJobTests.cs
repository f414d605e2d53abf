using ProcRunner.Runs;
using ProcRunner.Shop;
using ProcRunner.Trail;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Parts;
using ProcRunner.Tui.Screens.Shop;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Tests.Shop;

/// <summary>A head comes in.</summary>
public sealed class NewJobTests : IDisposable
{
    private readonly ShopBench _bench = new();

    public void Dispose() => _bench.Dispose();

    [Fact]
    public void A_job_is_opened_from_the_menu_with_the_number_pad_and_the_customers_name()
    {
        Desk desk = new Desk(new JobListScreen(_bench.Session)).Type("/1\n\n1\n1\nUpper Field\n\n\n\n\n\n\n");

        JobRun run = Assert.IsType<StandInRun>(desk.Top).Run;
        JobHeader header = run.State.Job!;
        Assert.Equal(("1001", "Upper Field", "", "", false), Told(header));
        ShopJob job = _bench.Shop.JobsWithStamp("1001").Single();
        Assert.Equal(2, job.Texts.Length);

        // What is pinned is what the files said, byte for byte.
        byte[] procedure = File.ReadAllBytes(Path.Combine(Machine.ProceduresFolder, "two-valve-iron.yaml"));
        Assert.Equal(Digest.Of(procedure).ToString(), header.ProcedureDigest);
        Assert.Contains(Digest.Of(procedure), job.Texts);
        Assert.Equal("vale", _bench.Store.Reader.ReadTrail(job.Id).Entries[0].Entry.Operator);
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("1\n")]
    public void On_an_empty_list_the_natural_key_opens_a_new_job(string keys) =>
        Assert.IsType<NewJobForm>(new Desk(new JobListScreen(_bench.Session)).Type(keys).Top);

    [Fact]
    public void Everything_known_of_the_head_is_kept_and_practice_is_marked()
    {
        Desk desk = Form().Type("2417\n1\n1\nMill Lane\nsmokes when cold\nskimmed once\n\n\n2\n\n");

        JobHeader header = Assert.IsType<StandInRun>(desk.Top).Run.State.Job!;
        Assert.Equal(("2417", "Mill Lane", "smokes when cold", "skimmed once", true), Told(header));

        Desk state = new(new JobScreen(_bench.Session, ((StandInRun)desk.Top!).Run));
        Assert.Contains(" PRACTICE ", state.Picture(_bench.Look), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1001", "another head's already")]
    [InlineData("DEMO-2", "kept for the demo")]
    public void A_stamp_that_cant_be_is_refused_and_stays_to_be_mended(string stamp, string said)
    {
        _bench.Open("1001", "");
        Desk desk = Form().Type(stamp + "\n");

        Assert.Contains(said, desk.Picture(_bench.Look), StringComparison.Ordinal);
        Assert.Contains($"stamp    {stamp}_", desk.Picture(_bench.Look), StringComparison.Ordinal);
        Assert.Single(_bench.Shop.Jobs);
    }

    [Fact]
    public void All_problems_of_a_chosen_file_are_shown_and_it_isnt_taken()
    {
        string shipped = File.ReadAllText(Path.Combine(Machine.ProceduresFolder, "two-valve-iron.yaml"));
        string spoiled =
            shipped.Replace("revision: 2", "revision: none", StringComparison.Ordinal) + "\nno-such-key: 1\n";
        Write("procedures/spoiled.yaml", spoiled);
        int problems = Yaml
            .ProcedureFile.Load("spoiled.yaml", System.Text.Encoding.UTF8.GetBytes(spoiled))
            .Problems.Count;
        Assert.True(problems >= 2, "the file is to have several problems");

        Desk desk = new Desk(new NewJobForm(_bench.Session)).Type("\n");
        int number = NumberOf(desk, "spoiled.yaml");
        desk.Type(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{number}\n"));

        Assert.IsType<PageScreen>(desk.Top);
        string page = desk.Picture(_bench.Look, 120, 40);
        Assert.Contains($"{problems} problems", page, StringComparison.Ordinal);
        Assert.Equal(
            problems,
            page.Split('\n').Count(line => line.Contains("spoiled.yaml:", StringComparison.Ordinal))
        );

        desk.Type("\n");
        Assert.Contains("procedure    _", desk.Picture(_bench.Look), StringComparison.Ordinal);
    }

    [Fact]
    public void A_head_spec_that_doesnt_go_with_the_procedure_shows_what_is_missing()
    {
        string shipped = File.ReadAllText(Path.Combine(Machine.ProceduresFolder, "heads", "pump-four.yaml"));
        Write("procedures/other-head.yaml", shipped.Replace("  pre-chambers: yes\n", "", StringComparison.Ordinal));

        Desk desk = new Desk(new NewJobForm(_bench.Session)).Type("\n1\n");
        int number = NumberOf(desk, "other-head.yaml");
        desk.Type(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{number}\n"));

        Assert.Contains("pre-chambers", desk.Picture(_bench.Look), StringComparison.Ordinal);
        Assert.IsType<PageScreen>(desk.Top);
    }

    [Fact]
    public void Back_a_line_keeps_what_was_entered_and_out_of_the_first_nothing_is_opened()
    {
        Desk desk = Form().Type("2417\n1\n1\nMill L/");

        // A slash in a line that isn't empty is part of it.
        Assert.Contains("Mill L/_", desk.Picture(_bench.Look), StringComparison.Ordinal);
        desk.Type("\b\n/");
        Assert.Contains("customer    _", desk.Picture(_bench.Look), StringComparison.Ordinal);
        desk.Type("\n\n\n\n\n\n\n");
        Assert.Equal("Mill L", Assert.IsType<StandInRun>(desk.Top).Run.State.Job!.Customer);

        Desk other = new Desk(new JobListScreen(_bench.Session)).Type("/1\n2418\n//");
        Assert.IsType<JobListScreen>(other.Top);
        Assert.Single(_bench.Shop.Jobs);
    }

    private Desk Form() => new(new NewJobForm(_bench.Session, [Machine.ProceduresFolder]));

    private void Write(string name, string text)
    {
        string path = Path.Combine(_bench.Folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
    }

    private int NumberOf(Desk desk, string file)
    {
        string line = desk.Picture(_bench.Look).Split('\n').First(l => l.Contains(file, StringComparison.Ordinal));
        return int.Parse(line.Trim().Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
    }

    private static (string, string, string, string, bool) Told(JobHeader header) =>
        (header.Stamp, header.Customer, header.Complaint, header.EarlierWork, header.Practice);
}
