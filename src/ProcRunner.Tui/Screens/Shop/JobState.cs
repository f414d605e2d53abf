using System.Globalization;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Store.Local;
using ProcRunner.Trail;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Lines;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>How a job stands, as text. Made once, when the screen comes up.</summary>
internal sealed class JobState
{
    private const int MostRechecks = 20;
    private readonly ShopSession _session;
    private readonly RunState _run;
    private readonly TrailReading _trail;
    private (int Width, IReadOnlyList<TextLine> Lines) _made = (0, []);

    /// <summary>Reads the job's trail from end to end.</summary>
    public JobState(ShopSession session, JobRun run)
    {
        (_session, _run) = (session, run.State);
        _trail = session.Store.Reader.ReadTrail(run.State.JobId);
    }

    /// <summary>The text for a width.</summary>
    public IReadOnlyList<TextLine> Lines(int width)
    {
        if (_made.Width != width)
        {
            _made = (
                width,
                [.. Head(), .. Rechecks(), .. ValueTable.Lines(_run, width), .. Parts(), .. Marks(), .. Corrections()]
            );
        }

        return _made.Lines;
    }

    private IEnumerable<TextLine> Head()
    {
        JobHeader job = _run.Job!;
        Outlook outlook = new(_run);
        bool isOpen = _run.Standing == JobStanding.Open;
        string waits = isOpen && Prompter.Next(_run) is { } at ? _run.Plan.NameOf(at) : "";
        yield return new(Standing(), InkOfStanding());
        yield return Fact(
            "waits for",
            waits.Length > 0 ? waits
                : _run.Standing == JobStanding.Held ? "to be taken up again"
                : "nothing"
        );
        if (isOpen)
        {
            int open = outlook.Open.Count;
            yield return Fact("open now", open == 1 ? "1 step" : $"{Number(open)} steps");
        }

        yield return Fact("customer", job.Customer);
        yield return Fact("complaint", job.Complaint);
        yield return Fact("earlier work", job.EarlierWork);
        foreach (string link in JobLinks.Short(_run, _session.Store.Index))
        {
            yield return Fact("other jobs", link);
        }

        yield return Fact("procedure", $"{_run.Plan.Procedure.Title}, revision {Number(_run.Plan.Procedure.Revision)}");
        yield return Fact("head spec", $"{_run.Plan.Head.Title}, revision {Number(_run.Plan.Head.Revision)}");
        if (!_trail.Entries.IsEmpty)
        {
            yield return Fact("opened", Moment(_trail.Entries[0].Entry));
            yield return Fact("last entry", Moment(_trail.Entries[^1].Entry));
        }

        yield return Fact("notes", Number(_run.Notes.Count));
        yield return Fact("trail", TrailWords());
        if (_run.Standing is JobStanding.Released or JobStanding.Scrapped && !_trail.Entries.IsEmpty)
        {
            yield return Fact("proof code", ProofCode.Of(_trail.Entries[^1].Digest).ToString());
        }
    }

    private IEnumerable<TextLine> Rechecks()
    {
        Outlook outlook = new(_run);
        At[] rechecks = [.. outlook.All.Where(outlook.IsRecheck)];
        if (rechecks.Length == 0)
        {
            yield break;
        }

        yield return new("");
        yield return new("RECHECK: something that these rest on has moved", Ink.Mind);
        foreach (At at in rechecks.Take(MostRechecks))
        {
            string cause = _run.Find(at)?.Cause is { Length: > 0 } why ? $": {why}" : "";
            yield return new($"{_run.Plan.NameOf(at)}{cause}", Indent: 2);
        }

        if (rechecks.Length > MostRechecks)
        {
            yield return new($"and {Number(rechecks.Length - MostRechecks)} more", Ink.Quiet, 2);
        }
    }

    private IEnumerable<TextLine> Parts()
    {
        if (_run.Parts.Count == 0)
        {
            yield break;
        }

        yield return new("");
        yield return new("PARTS FITTED", Ink.Strong);
        foreach (RunEvent.PartFitted part in _run.Parts)
        {
            string where = _run.Plan.PositionName(part.At.Position);
            yield return new($"{where, -5} {part.Part}: {part.Number}, lot {part.Lot}", Indent: 2);
        }
    }

    private IEnumerable<TextLine> Marks()
    {
        bool headed = false;
        foreach ((TrailEntry entry, _) in _trail.Entries)
        {
            foreach (Json.Map map in entry.Events)
            {
                if (RunEventFormat.Read(_run.Plan, map) is not { } happened || MarkWords(happened) is not { } words)
                {
                    continue;
                }

                if (!headed)
                {
                    headed = true;
                    yield return new("");
                    yield return new("SIGNED", Ink.Strong);
                }

                yield return new($"{Ago.Clock(entry.At.ToOffset(entry.Offset))}  {words}", Indent: 2);
            }
        }
    }

    private IEnumerable<TextLine> Corrections()
    {
        if (_run.Corrections.Count == 0)
        {
            yield break;
        }

        yield return new("");
        yield return new("CORRECTED", Ink.Strong);
        foreach (CorrectedEntry correction in _run.Corrections)
        {
            string entry = $"entry {Number(correction.Sequence)}";
            yield return new(Fitting.Words($"{CorrectionWords.Of(_run, correction)} ({entry})"), Indent: 2);
        }
    }

    private string? MarkWords(RunEvent happened) =>
        happened switch
        {
            RunEvent.SignedOff e => $"{_run.Plan.NameOf(e.At)}: {e.Meaning}, {e.Mark.Name}{Beside(e.Beside)}",
            RunEvent.JobReleased e => $"released, {e.Mark.Name}{Beside(e.Beside)}",
            RunEvent.Conceded e => $"{_run.Plan.NameOf(e.At)}: conceded by {e.Mark.Name}: {Fitting.Words(e.Reason)}",
            RunEvent.HeadScrapped e => $"scrapped by {e.Mark.Name}: {Fitting.Words(e.Reason)}",
            _ => null,
        };

    private string Standing() =>
        _run.Standing switch
        {
            JobStanding.Held => $"ON HOLD: {Fitting.Words(_run.StandingReason)}",
            JobStanding.Released => "RELEASED",
            JobStanding.Scrapped => $"SCRAPPED: {Fitting.Words(_run.StandingReason)}",
            _ => "IN WORK",
        };

    private Ink InkOfStanding() =>
        _run.Standing switch
        {
            JobStanding.Held => Ink.Mind,
            JobStanding.Scrapped => Ink.Bad,
            _ => Ink.Strong,
        };

    private string TrailWords() =>
        _trail.Verdict is TrailVerdict.Holds holds
            ? $"{Number(holds.Entries)} entries, each follows from the one before"
            : _trail.Verdict.InWords();

    private string Moment(TrailEntry entry) =>
        $"{Ago.Clock(entry.At.ToOffset(entry.Offset))}, {_session.NameOf(entry.Operator)}";

    private static string Beside(Mark? mark) => mark is null ? "" : $", {mark.Name} beside";

    private static TextLine Fact(string name, string text) => new(Fitting.Words(text), Label: name);

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);
}
