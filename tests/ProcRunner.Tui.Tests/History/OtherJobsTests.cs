using ProcRunner.Records;
using ProcRunner.Records.History;
using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Trail;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;
using ProcRunner.Tui.Tests.Run;

namespace ProcRunner.Tui.Tests.History;

/// <summary>Jobs that have to do with each other: a head that comes back, the heads of one engine. All of it is invented.</summary>
public sealed class OtherJobsTests : IDisposable
{
    private readonly DemoJob _demo = new();

    public void Dispose() => _demo.Dispose();

    [Fact]
    public void A_comeback_stands_beside_how_it_went_out_and_the_earlier_trail_stays_as_it_is()
    {
        Assert.Equal(Status.Done, _demo.Lines(DemoJob.Entries));
        byte[] before = File.ReadAllBytes(_demo.TrailFile);
        JobRun back = Open("2500", earlier: DemoShop.Stamp);
        Assert.Equal(Status.Done, Lines(back, UpToSignedTeardown()));

        string text = string.Join('\n', JobLinks.Lines(_demo.Store.Reader, _demo.Store.Index, back.State, 78));

        // As built: the demo's last recession at 1I; as found: the demo's first one at 1I. It went towards its low limit, so
        // what is used is the change as a part of what was left to that.
        ValueRecord built = _demo.Job.State.Value("recession", Position("1I"))!;
        ValueRecord found = back.State.Value("recession", Position("1I"))!;
        decimal change = found.AsFound!.Value.Value - built.Value.Value;
        decimal left = built.Judgement.Low!.Value.Value - built.Value.Value;
        Assert.True(change < 0 && left < 0);
        string[] table =
        [
            .. text.Split('\n')
                .SkipWhile(l => !l.StartsWith("recession, in; built to ", StringComparison.Ordinal))
                .Take(7),
        ];
        Assert.StartsWith("1I", table[1].Trim(), StringComparison.Ordinal);
        Assert.Equal(["built", Text(built.Value.Value)], Words(table[2])[..2]);
        Assert.Equal(["found", Text(found.AsFound.Value.Value)], Words(table[3])[..2]);
        Assert.Equal(["change", Text(change)], Words(table[4])[..2]);
        Assert.Equal(["used", Text(decimal.Round(100 * change / left, MidpointRounding.ToEven))], Words(table[5])[..2]);

        // 2E was found deeper than it was ever allowed to be.
        Assert.Equal("PAST", table[6].Trim());
        Assert.Equal(table[1].IndexOf("2E", StringComparison.Ordinal) + 2, table[6].Length);
        Assert.Contains("not measured as found: ", text, StringComparison.Ordinal);
        Assert.Contains("nearest to a limit when it went out:", text, StringComparison.Ordinal);
        Assert.Contains("replaced then:", text, StringComparison.Ordinal);
        foreach (RunEvent.PartFitted part in _demo.Job.State.Parts)
        {
            string where = _demo.Job.State.Plan.PositionName(part.At.Position);
            Assert.Matches($"{part.Number}: .*{where} lot {part.Lot}", text);
        }

        // Linked both ways: the earlier job shows the same, and nothing was written to its trail.
        Assert.Equal(
            text,
            string.Join('\n', JobLinks.Lines(_demo.Store.Reader, _demo.Store.Index, _demo.Job.State, 78))
        );
        Assert.Equal(DemoShop.Stamp, back.State.Earlier!.Stamp);
        Assert.Equal("2500", Assert.Single(_demo.Store.Index!.ComebacksOf(_demo.Job.State.JobId)).Stamp);
        Assert.Contains(
            "It came back as 2500",
            string.Join('\n', JobLinks.Short(_demo.Job.State, _demo.Store.Index)),
            StringComparison.Ordinal
        );
        Assert.Equal(before, File.ReadAllBytes(_demo.TrailFile));
        Assert.IsType<TrailVerdict.Holds>(_demo.Store.Reader.ReadTrail(_demo.Job.State.JobId).Verdict);
    }

    [Fact]
    public void The_limit_that_was_nearest_is_the_one_with_the_least_room_left()
    {
        Assert.Equal(Status.Done, _demo.Lines(DemoJob.Entries));
        Comeback comeback = new(_demo.Job.State, _demo.Job.State);
        Comeback.Nearness nearest = comeback.Nearest.First();

        // Worked out here a second time, in doubles, over every value with both limits.
        double least = comeback
            .Rows.Where(r =>
                r.Limits.Low is { } l && r.Limits.High is { } h && l.Unit == r.Built.Unit && h.Unit == r.Built.Unit
            )
            .Min(r =>
            {
                double low = (double)r.Limits.Low!.Value.Value;
                double high = (double)r.Limits.High!.Value.Value;
                double built = (double)r.Built.Value;
                return Math.Min(built - low, high - built) / (high - low);
            });
        Assert.True(nearest.Share <= least + 1e-9);
        Assert.Equal(comeback.Nearest.Min(n => n.Share), nearest.Share);
    }

    [Fact]
    public void A_linked_head_isnt_released_before_both_are_compared_and_the_reason_is_kept()
    {
        JobRun other = Open("2501", linked: DemoShop.Stamp);
        Assert.Null(EngineHeads.Tell(_demo.Job, other));
        Assert.Equal("2501", Assert.Single(_demo.Job.State.Linked).Stamp);
        Assert.Equal(DemoShop.Stamp, Assert.Single(other.State.Linked).Stamp);

        // The demo's last line releases the head; with the other one unknown it is refused.
        Assert.Equal(Status.No, _demo.Lines(DemoJob.Entries));
        Assert.Equal(JobStanding.Open, _demo.Job.State.Standing);
        JobAnswer.Refused unknown = Assert.IsType<JobAnswer.Refused>(_demo.Job.DecideHeads(together: true, ""));
        Assert.Contains(unknown.WhatToDo, w => w.Contains("not known on the other head", StringComparison.Ordinal));
        Assert.IsType<JobAnswer.Refused>(_demo.Job.DecideHeads(together: false, ""));

        Assert.Equal(Status.Done, _demo.Lines(["heads apart because the other one comes later", DemoJob.Entries[^1]]));
        Assert.Equal(JobStanding.Released, _demo.Job.State.Standing);
        RunEvent.HeadsCompared kept = _demo.Job.State.Compared[other.State.JobId];
        Assert.Equal((false, "the other one comes later"), (kept.Together, kept.Reason));
        Assert.Contains(kept.Figures, f => f.Of == "deck thickness" && f.Here.Length > 0 && f.There.Length == 0);
        Assert.Contains(kept.Figures, f => f.Of.StartsWith("recession", StringComparison.Ordinal));
    }

    [Fact]
    public void The_build_record_sets_the_heads_of_an_engine_side_by_side()
    {
        JobRun other = Open("2504", linked: DemoShop.Stamp);
        Assert.Null(EngineHeads.Tell(_demo.Job, other));
        Assert.Equal(Status.No, _demo.Lines(DemoJob.Entries));
        Assert.Equal(Status.Done, _demo.Lines(["heads apart because the other one comes later", DemoJob.Entries[^1]]));

        (JobAccount? account, _) = JobAccount.Read(_demo.Store.Reader, _demo.Job.State.JobId);
        string here = _demo.Job.State.Compared[other.State.JobId].Figures.First(f => f.Of == "deck thickness").Here;
        Assert.Contains(
            account!.Record.OtherHeads,
            o => o.Position == "2504" && o.About == "deck thickness" && o.Text == $"here {here}, there not known"
        );
        using MemoryStream page = new();
        RecordFile.Write(account.Record, "record.html", page, WritingProgress.None);
        string html = System.Text.Encoding.UTF8.GetString(page.ToArray());
        Assert.Contains("released apart: the other one comes later", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Heads_that_match_are_released_together_and_a_later_reading_asks_again()
    {
        JobRun other = Open("2502", linked: DemoShop.Stamp);
        Assert.Null(EngineHeads.Tell(_demo.Job, other));
        IReadOnlyList<string> all = [.. DemoJob.Entries.Take(DemoJob.Entries.Count - 1)];
        Assert.Equal(Status.Done, _demo.Lines(all));
        Assert.Equal(Status.Done, Lines(other, all));

        Assert.IsType<JobAnswer.Recorded>(_demo.Job.DecideHeads(together: true, ""));
        Assert.All(_demo.Job.State.Compared[other.State.JobId].Figures, f => Assert.False(f.Differs));
        Assert.Equal(Status.Done, _demo.Lines([DemoJob.Entries[^1]]));
        Assert.Equal(JobStanding.Released, _demo.Job.State.Standing);
    }

    [Fact]
    public void A_head_isnt_linked_with_itself_or_twice()
    {
        JobRun other = Open("2503", linked: DemoShop.Stamp);
        Assert.IsType<JobAnswer.Refused>(other.Do(new RunCommand.LinkHead(_demo.Job.State.JobId, DemoShop.Stamp)));
        Assert.IsType<JobAnswer.Refused>(other.Do(new RunCommand.LinkHead(other.State.JobId, "2503")));
    }

    [Fact]
    public void A_lot_and_a_gauge_are_recalled()
    {
        Assert.Equal(Status.Done, _demo.Lines(DemoJob.Entries));
        SearchIndex index = _demo.Store.Index!;
        RunEvent.PartFitted part = _demo.Job.State.Parts[0];

        Assert.Equal(DemoShop.Stamp, Assert.Single(index.Holding(part.Number, part.Lot)).Stamp);
        Assert.Empty(index.Holding(part.Number, part.Lot + "x"));
        DateTimeOffset good = GaugeGoodness.LastKnownGood(_demo.Store.Reader, "D1")!.Value;
        TakenReading[] depths = [.. Readings().Where(r => r.Gauge == "D1")];
        Assert.True(depths.Length > 20);
        HashSet<string> taken = [.. depths.Select(r => r.Characteristic)];
        Assert.Equal(depths.Length, index.ReadingsWith("D1", good).Count(r => taken.Contains(r.Reading.Name)));
        Assert.Empty(index.ReadingsWith("D1", DateTimeOffset.MaxValue));
        Assert.Null(GaugeGoodness.LastKnownGood(_demo.Store.Reader, "none"));
    }

    [Fact]
    public void A_part_that_another_took_the_place_of_is_recalled_as_such()
    {
        _demo.UpTo("guide replacement / valve 2E");
        Assert.Equal(Status.Done, _demo.Lines(["70-135, lot 70-1-22"]));
        At at = _demo.Job.State.Parts[0].At;
        RunEvent.PartFitted next = new(at, _demo.Job.State.Parts[0].Part, "70-135", "70-2-22");
        EntryDraft draft = new("vale", [RunEventFormat.Write(_demo.Job.State.Plan, next)]);
        Assert.IsType<AppendResult.Written>(_demo.Store.Append(_demo.Job.State.JobId, draft));

        IndexedJob[] first = [.. _demo.Store.Index!.Holding("70-135", "70-1-22")];
        Assert.Equal("2E (replaced again later)", RecallLines.Where(Assert.Single(first), "70-135", "70-1-22"));
        Assert.Equal(
            "0 jobs hold 70-135, lot 70-1-22; 1 held it until another took its place",
            RecallLines.Held(first, "70-135", "70-1-22")
        );
        IndexedJob[] second = [.. _demo.Store.Index!.Holding("70-135", "70-2-22")];
        Assert.Equal("2E", RecallLines.Where(Assert.Single(second), "70-135", "70-2-22"));
        Assert.Equal("1 job holds 70-135, lot 70-2-22", RecallLines.Held(second, "70-135", "70-2-22"));

        // The same out of the file, as the next program reads it.
        _demo.Reopen();
        Assert.Equal(
            "2E (replaced again later)",
            RecallLines.Where(Assert.Single(_demo.Store.Index!.Holding("70-135", "70-1-22")), "70-135", "70-1-22")
        );
    }

    [Fact]
    public void A_trend_counts_what_was_made_leaves_practice_out_and_tells_as_found_apart()
    {
        Assert.Equal(Status.Done, _demo.Lines(DemoJob.Entries));
        using DemoJob practice = new(practice: true);
        Assert.Equal(Status.No, practice.Lines(DemoJob.Entries));
        Assert.Equal(JobStanding.Open, practice.Job.State.Standing);

        Assert.Empty(ReadingHistory.Of(practice.Store.Index!, "recession", asFound: false));
        Records.History.TrendReading[] made = [.. ReadingHistory.Of(_demo.Store.Index!, "recession", asFound: false)];
        Records.History.TrendReading[] found = [.. ReadingHistory.Of(_demo.Store.Index!, "recession", asFound: true)];
        Assert.Equal(8, found.Length);
        Assert.True(made.Length >= 8);
        Assert.All(made, r => Assert.Equal(DemoShop.Stamp, r.Stamp));
        Assert.Contains(made, r => r.IsOut);
    }

    [Fact]
    public void A_corrected_reading_is_no_part_of_the_history()
    {
        _demo.UpTo("teardown / recession 1I");
        Assert.Equal(
            Status.Done,
            _demo.Lines([".0600 .0600 .0600 .0600", "correct .0601 .0601 .0601 .0601 because typing error"])
        );
        string[] values = [.. _demo.Store.Index!.ReadingsOf("recession").Select(r => r.Reading.Value)];

        Assert.Equal(["0.0601 in"], values);
    }

    [Theory]
    [InlineData("done, pilot 8.5, cutter K4 edge 2", "K4")]
    [InlineData("cutter: k4", "K4")]
    [InlineData("cutter edge changed, cutter C12.", "C12")]
    [InlineData("the cutter chattered", null)]
    [InlineData("cutters", null)]
    [InlineData("", null)]
    public void A_cutter_is_what_a_remark_calls_it(string remark, string? name) =>
        Assert.Equal(name, CutterName.In(remark));

    private static string Text(decimal number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);

    private static string[] Words(string line) => line.Split(' ', StringSplitOptions.RemoveEmptyEntries);

    private IEnumerable<TakenReading> Readings() =>
        _demo
            .Store.Reader.ReadTrail(_demo.Job.State.JobId)
            .Entries.SelectMany(e => e.Entry.Events)
            .Select(map => RunEventFormat.Read(_demo.Job.State.Plan, map))
            .OfType<RunEvent.ReadingTaken>()
            .Select(e => e.Reading);

    private int Position(string name) => _demo.Job.State.Plan.TryPosition(name, out int at) ? at : -1;

    private static IEnumerable<string> UpToSignedTeardown()
    {
        int end = DemoJob.Entries.ToList().FindIndex(l => l.StartsWith("@ guide", StringComparison.Ordinal));
        return DemoJob.Entries.Take(end);
    }

    private static int Lines(JobRun job, IEnumerable<string> lines)
    {
        using StringReader input = new(string.Join('\n', lines));
        return new Tui.Lines.LineRun(
            job,
            new Tui.Lines.LineInput(input, isPiped: true, TextWriter.Null),
            TextWriter.Null
        ).Run();
    }

    private JobRun Open(string stamp, string? earlier = null, string? linked = null)
    {
        (OtherJobs? others, string fault) = OtherJobs.Find(_demo.Store, earlier, linked);
        Assert.True(others is not null, fault);
        (PlanTexts? texts, _) = DemoShop.ReadPlan();
        JobHeader header = new()
        {
            Stamp = stamp,
            ProcedureDigest = texts!.ProcedureDigest.ToString(),
            HeadDigest = texts.HeadDigest.ToString(),
        };
        (JobRun? run, fault) = JobRun.Begin(_demo.Store, Machine.Time, texts, header, DemoShop.Operator, others);
        return run ?? throw new InvalidOperationException(fault);
    }
}
