using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Shop;
using ProcRunner.Testing;
using ProcRunner.Tui.Screens;

namespace ProcRunner.Tui.Tests.Run;

/// <summary>What a run's pages do besides the straight way through: doubt, trouble, refusals, the menu.</summary>
public sealed class RunPagesTests : IDisposable
{
    private const string HeadLost = "teardown / head lost before head";
    private const string Temperature = "teardown / head temperature head";
    private readonly List<DemoJob> _jobs = [];

    public void Dispose() => _jobs.ForEach(job => job.Dispose());

    [Fact]
    public void A_doubtful_entry_is_asked_about_with_its_meanings_numbered()
    {
        (DemoJob job, PadOperator pad) = At(Temperature, tries: "680");
        Assert.True(pad.Desk.TakeBell());
        Golden.Match(pad.Picture(), "question.txt");

        pad.Enter("7");
        Assert.Contains("There is no 7", pad.See(), StringComparison.Ordinal);
        pad.Choose("68.0 degF");
        Assert.Equal("68.0 degF", Last(job).Value.ToString());
    }

    [Fact]
    public void A_question_is_answered_by_the_reading_typed_again()
    {
        (DemoJob job, PadOperator pad) = At(Temperature, tries: "680");
        pad.Enter("69.");
        Assert.Equal("69 degF", Last(job).Value.ToString());
    }

    // The vacuum gauge and its like give whole numbers: those are readings here, not the number of a meaning.
    [Fact]
    public void A_reading_hard_to_believe_is_answered_by_a_second_reading_even_a_whole_number()
    {
        (DemoJob job, PadOperator pad) = At("assemble / spring free length 1I");
        pad.Enter("2");
        Assert.True(pad.Desk.TakeBell());
        Assert.Contains(
            "Read 2 in; 0.0520 in more than as found, 1.9480 in.",
            Flat(pad.See(), columns: 52),
            StringComparison.Ordinal
        );
        Golden.Match(pad.Picture(), "doubt.txt");

        pad.Enter("2");
        Assert.Equal("2 in", Last(job).Value.ToString());
    }

    [Fact]
    public void A_place_one_turn_off_is_asked_about_at_once_and_typed_again_alone()
    {
        (DemoJob job, PadOperator pad) = At("teardown / recession 1I");
        Array.ForEach([".0512", ".0509", ".1510"], pad.Enter);
        Assert.True(pad.Desk.TakeBell());
        Golden.Match(pad.Picture(), "doubt of a place.txt");

        Array.ForEach([".0510", ".0511"], pad.Enter);
        Assert.Equal("0.0512 in", Last(job).Value.ToString());
        Assert.Equal([0.0512m, 0.0509m, 0.0510m, 0.0511m], Last(job).Places.Select(p => p.Value.Value));
    }

    [Fact]
    public void A_place_one_turn_off_that_is_read_twice_alike_is_taken_without_typing_all_again()
    {
        (DemoJob job, PadOperator pad) = At("teardown / recession 1I");
        Array.ForEach([".0512", ".0509", ".1510", ".1511", ".0511"], pad.Enter);

        Assert.Equal([0.0512m, 0.0509m, 0.1511m, 0.0511m], Last(job).Places.Select(p => p.Value.Value));
        Assert.Single(
            job.Store.Reader.ReadTrail(job.Job.State.JobId)
                .Entries.SelectMany(e => e.Entry.Events)
                .Select(e => RunEventFormat.Read(job.Job.State.Plan, e))
                .OfType<RunEvent.EntryQuestioned>()
        );
    }

    [Fact]
    public void All_places_in_one_line_take_the_place_of_those_typed_so_far()
    {
        (DemoJob job, PadOperator pad) = At("teardown / recession 1I");
        pad.Enter(".0530");
        pad.Write(".0512 .0509 .0510 .0511");
        Assert.Equal([0.0512m, 0.0509m, 0.0510m, 0.0511m], Last(job).Places.Select(p => p.Value.Value));
    }

    // A lost point, 39310 for 3.9310, at the second of five places.
    [Fact]
    public void A_doubtful_place_is_asked_about_before_the_next_one_is_typed()
    {
        (DemoJob job, PadOperator pad) = At("teardown / deck thickness head");
        Array.ForEach(["3.9312", "39310"], pad.Enter);
        Assert.Contains("39310 with no unit is far", pad.See(), StringComparison.Ordinal);

        pad.Choose("3.9310 in");
        Array.ForEach(["3.9316", "3.9314", "3.9308"], pad.Enter);
        Assert.Equal([3.9312m, 3.9310m, 3.9316m, 3.9314m, 3.9308m], Last(job).Places.Select(p => p.Value.Value));
    }

    // Of many places one was misread: only that one is typed again.
    [Fact]
    public void A_correction_keeps_the_places_that_only_Enter_is_pressed_at()
    {
        (DemoJob job, PadOperator pad) = At("teardown / recession 1I");
        Array.ForEach([".0512", ".0509", ".0510", ".0501"], pad.Enter);
        pad.Type("/");
        pad.Choose("correct");
        pad.Enter("1");
        Assert.Contains("Enter: keeps 0.0512", pad.See(), StringComparison.Ordinal);
        Array.ForEach(["", "", "", ".0511"], pad.Enter);
        pad.Choose("misread gauge");

        Assert.Equal(["0.0512", "0.0509", "0.0510", "0.0511"], Last(job).Places.Select(p => p.Value.ToString()[..6]));
    }

    // When it is read the screen is at the next step already.
    [Fact]
    public void What_was_recorded_last_says_which_step_and_position_it_was()
    {
        (_, PadOperator pad) = At("teardown / recession 1I");
        Array.ForEach([".0512", ".0509", ".0510", ".0511"], pad.Enter);
        Assert.Contains("\n 1I  recession 0.0512 in; gauge for depth: D1", pad.See(), StringComparison.Ordinal);

        (_, pad) = At("teardown / take the head apart head");
        pad.Enter();
        Assert.Contains("\n take the head apart: done", pad.See(), StringComparison.Ordinal);
    }

    [Fact]
    public void Enter_with_nothing_typed_is_told_what_to_type()
    {
        (_, PadOperator pad) = At(Temperature);
        pad.Enter();
        Assert.Contains("Type what is asked for (reading), then Enter.", pad.See(), StringComparison.Ordinal);
    }

    // A menu's number pressed a moment too late, or a point lost, isn't a pass two inches deep.
    [Fact]
    public void A_pass_far_past_the_target_is_asked_about_with_keys_of_the_pad()
    {
        (DemoJob job, PadOperator pad) = At("seat counterbore / counterbore depth 2E");
        pad.Enter("2");
        Assert.Contains(
            "The target is 0.2770 in; 2 in is a long way past it.",
            Flat(pad.See(), columns: 50),
            StringComparison.Ordinal
        );

        pad.Enter(".2770");
        Assert.Equal(0.2770m, job.Job.State.Find(job.Job.State.LastAt!.Value)!.Cut!.Readout.Value);
    }

    private static string Flat(string picture, int columns = 120) =>
        string.Join(
            ' ',
            picture
                .Split('\n')
                .SelectMany(row =>
                    row[..Math.Min(columns, row.Length)]
                        .Split((char[])[' ', '|'], StringSplitOptions.RemoveEmptyEntries)
                )
        );

    [Fact]
    public void A_comma_at_one_place_is_asked_about_before_the_others_are_typed()
    {
        (DemoJob job, PadOperator pad) = At("teardown / recession 1I");
        pad.Enter(".0512");
        pad.Write("0,0509");
        pad.Choose("0.0509 in");
        pad.Enter(".0510");
        pad.Enter(".0511");
        Assert.Equal("0.0512 in", Last(job).Value.ToString());
        Assert.Equal("0.0509", Last(job).Places[1].Value.ToString()[..6]);
    }

    [Fact]
    public void What_cant_be_read_stays_in_the_line_to_be_mended()
    {
        (DemoJob job, PadOperator pad) = At(HeadLost);
        long before = job.Job.State.Sequence;
        pad.Enter("1//9");
        Assert.True(pad.Desk.TakeBell());
        Assert.Equal(before, job.Job.State.Sequence);
        Golden.Match(pad.Picture(), "not-taken.txt");

        pad.Type("****");
        pad.Enter(".009");
        Assert.Equal("0.009 in", Last(job).Value.ToString());
    }

    [Fact]
    public void After_a_refusal_the_next_reading_of_a_gauge_stands_alone()
    {
        (DemoJob job, PadOperator pad) = At(HeadLost);
        pad.Write("misread label");
        pad.Enter(".009");
        Assert.Equal("0.009 in", Last(job).Value.ToString());
    }

    [Fact]
    public void Disk_trouble_is_said_and_the_entry_is_kept_to_be_tried_again()
    {
        (DemoJob job, _) = At(HeadLost);
        job.Reopen();
        PadOperator pad = new(job.Job);
        pad.ReadCautions();
        File.Move(job.TrailFile, job.TrailFile + ".away");
        pad.Enter(".009");
        string picture = pad.See();
        Assert.Contains("NOT WRITTEN", picture, StringComparison.Ordinal);
        Assert.Contains("reading .009_", picture, StringComparison.Ordinal);
        Assert.Equal(3, job.Job.State.Sequence);

        File.Move(Away(job), Away(job)[..^".away".Length]);
        pad.Enter();
        Assert.Equal("0.009 in", Last(job).Value.ToString());
        Assert.True(job.Verifies);
    }

    [Fact]
    public void A_pasted_block_is_one_entry()
    {
        (DemoJob job, PadOperator pad) = At("teardown / recession 1I");
        pad.Desk.Press(new KeyPress(KeyKind.Paste, ".0512\n.0509\r\n.0510\t.0511\n"));
        pad.Enter();
        Assert.Equal(4, Last(job).Places.Count);
    }

    [Fact]
    public void A_concession_asks_a_reason_a_lead_and_a_PIN()
    {
        (DemoJob job, PadOperator pad) = At("guide replacement / guide outside 2E", tries: ".6263 .6264 .6264 .6263");
        Golden.Match(pad.Picture(), "concession-refusal.txt");
        pad.Enter(".6267");
        Assert.Contains("none of the ways on", pad.See(), StringComparison.Ordinal);
        pad.Choose("concession");
        pad.Enter(".6267");
        Assert.Contains("isn't in words", pad.See(), StringComparison.Ordinal);
        Golden.Match(pad.Picture(), "concession-reason.txt");
        pad.Choose("as measured");
        Golden.Match(pad.Picture(), "concession-lead.txt");
        pad.Choose("T. Moss (demo)");
        pad.Enter("2468");
        Assert.Contains("not the PIN", pad.See(), StringComparison.Ordinal);
        pad.Type("135790");
        Golden.Match(pad.Picture(), "concession-PIN.txt");
        pad.Enter();
        Assert.True(job.Job.State.Find(job.Job.State.LastAt!.Value)!.Conceded);
    }

    [Fact]
    public void A_scrapped_head_closes_the_job()
    {
        (DemoJob job, PadOperator pad) = At(Temperature, tries: "95");
        pad.Choose("scrap");
        pad.Choose("damaged");
        pad.Choose("T. Moss (demo)");
        pad.Enter("135790");
        Assert.Equal(JobStanding.Scrapped, job.Job.State.Standing);
        Golden.Match(WalkedJob.WithoutCode(job.Job, pad.Picture()), "scrapped.txt");
        pad.Enter();
        Assert.Null(pad.Desk.Top);
    }

    [Fact]
    public void A_refusal_rings_once()
    {
        (_, PadOperator pad) = At(Temperature, tries: "95");
        Assert.True(pad.Desk.TakeBell());
        pad.Type("//");
        Assert.False(pad.Desk.TakeBell());
    }

    [Fact]
    public void After_a_restart_the_last_entry_is_shown_first()
    {
        (DemoJob job, PadOperator pad) = At("teardown / block lost head");
        pad.Enter(".005");
        job.Reopen();
        PadOperator again = new(job.Job);
        again.ReadCautions();
        Assert.Contains(
            "recorded last: teardown / block lost: 0.005 in, entry 5",
            again.See(),
            StringComparison.Ordinal
        );
        Golden.Match(again.Picture(), "after-a-restart.txt");
    }

    [Fact]
    public void Practice_is_marked_on_every_page()
    {
        DemoJob job = new(practice: true);
        _jobs.Add(job);
        PadOperator pad = new(job.Job);
        Assert.Contains(" PRACTICE ", pad.See(), StringComparison.Ordinal);
        pad.ReadCautions();
        Golden.Match(pad.Picture(), "practice.txt");
        pad.Type("/");
        Assert.Contains(" PRACTICE ", pad.See(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_held_job_waits_to_be_taken_up()
    {
        (DemoJob job, PadOperator pad) = At(HeadLost);
        Menu(pad, "hold", "waiting for parts");
        Assert.Equal(JobStanding.Held, job.Job.State.Standing);
        Golden.Match(pad.Picture(), "held.txt");
        pad.Enter();
        Assert.Equal(JobStanding.Open, job.Job.State.Standing);
    }

    [Fact]
    public void The_menu_writes_notes_hands_over_and_corrects()
    {
        (DemoJob job, PadOperator pad) = At("teardown / block lost head");
        Menu(pad, "note", "see photo");
        Assert.Equal("see photo", Assert.Single(job.Job.State.Notes).Note.Text);
        Menu(pad, "correct", "head  teardown / head lost before: 0.009 in");
        pad.Enter(".008");
        pad.Choose("misread gauge");
        Assert.Equal("0.008 in", job.Job.State.Value("head lost before", Runs.At.Head)!.Value.ToString());
        Menu(pad, "hand over", "A. Finch (demo)");
        Assert.Equal("finch", job.Job.Person);
        Assert.Contains("A. Finch (demo)", pad.See(), StringComparison.Ordinal);
        Menu(pad, "history");
        Assert.Contains("note: see photo", pad.See(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_menu_goes_to_another_position_and_loses_nothing_typed_here()
    {
        (DemoJob job, PadOperator pad) = At("teardown / recession 1I");
        pad.Enter(".0512");
        Menu(pad, "go", "3E    teardown / recession");
        Assert.Contains("Measure recession at 3E", pad.See(), StringComparison.Ordinal);
        Menu(pad, "go", "1I    teardown / recession");
        Assert.Contains("front 0.0512", pad.See(), StringComparison.Ordinal);
        pad.Type("*");
        Assert.Contains("front ...", pad.See(), StringComparison.Ordinal);
        Assert.Equal("1I", job.Job.State.Plan.PositionName(0));
    }

    [Fact]
    public void A_cut_is_broken_off_to_measure_and_ended_within_its_window()
    {
        (DemoJob job, PadOperator pad) = At("seat cut / recession 2E");
        pad.Enter(".0170");
        Array.ForEach(".0580 .0577 .0578 .0579".Split(' '), pad.Enter);
        Menu(pad, "enough");
        At cut = job.Job.State.LastAt!.Value;
        Assert.Equal(StepStanding.Done, job.Job.State.StandingOf(cut));
    }

    [Fact]
    public void Of_two_gauges_of_a_kind_one_is_chosen_first()
    {
        DemoJob job = new(
            gauge: new Gauge("D2", "second depth gauge (demo)", "depth", Inch(0.0001m), Inch(0.0002m), null, null)
        );
        _jobs.Add(job);
        job.UpTo("teardown / recession 1I");
        PadOperator pad = new(job.Job);
        pad.ReadCautions();
        pad.Choose("D2  second depth gauge (demo)");
        Array.ForEach(".0512 .0509 .0510 .0511".Split(' '), pad.Enter);
        Assert.Equal("D2", Last(job).Gauge);
    }

    [Fact]
    public void A_limit_nobody_knows_is_chosen_in_the_run()
    {
        DemoJob job = new(
            head: (
                "deck thickness: {low: 3.915, aim: 3.940, high: 3.945, origin: maker}",
                "deck thickness: {ask: the maker's page is missing, origin: maker}"
            )
        );
        _jobs.Add(job);
        job.UpTo("teardown / deck thickness head");
        PadOperator pad = new(job.Job);
        pad.ReadCautions();
        Golden.Match(pad.Picture(), "limit-unknown.txt");
        Menu(pad, "limit", "deck thickness", "everywhere");
        Array.ForEach(["3.915", "", "3.945"], pad.Enter);
        pad.Choose("from the maker's book");
        Array.ForEach("3.9312 3.9310 3.9316 3.9314 3.9308".Split(' '), pad.Enter);
        Assert.Equal(Verdict.In, Last(job).Judgement.Verdict);
    }

    [Fact]
    public void Too_small_a_window_says_so_and_waits()
    {
        (_, PadOperator pad) = At(HeadLost);
        pad.Type(".00");
        Assert.Contains("80 x 24 is needed", pad.See(79, 24), StringComparison.Ordinal);
        Assert.Contains("reading .00_", pad.See(), StringComparison.Ordinal);
    }

    private (DemoJob Job, PadOperator Pad) At(string step, string? tries = null)
    {
        DemoJob job = new();
        _jobs.Add(job);
        job.UpTo(step);
        PadOperator pad = new(job.Job);
        pad.ReadCautions();
        Array.ForEach(tries?.Split(' ') ?? [], pad.Enter);
        return (job, pad);
    }

    private static void Menu(PadOperator pad, params string[] answers)
    {
        pad.Type("/");
        Array.ForEach(answers, pad.Choose);
    }

    private static TakenReading Last(DemoJob job) => job.Job.State.Find(job.Job.State.LastAt!.Value)!.Readings[^1];

    private static string Away(DemoJob job) => job.TrailFile;

    private static Quantity Inch(decimal value) => new(value, Units.Inch);
}
