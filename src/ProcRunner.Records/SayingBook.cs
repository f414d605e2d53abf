using ProcRunner.Procedures;
using ProcRunner.Records.Story;
using ProcRunner.Runs;

namespace ProcRunner.Records;

/// <summary>Parts, marks, notes, corrections, questions and what was said of tools, in the order they came.</summary>
internal sealed class SayingBook(Telling tell)
{
    private readonly Dictionary<At, (string Text, Stamped By)> _last = [];
    private readonly List<(At At, string Part, string Number, string Lot, Stamped By)> _parts = [];
    private readonly List<(At At, Questioned Question)> _asked = [];

    /// <summary>Marks.</summary>
    public List<MarkTold> Marks { get; } = [];

    /// <summary>Notes.</summary>
    public List<Said> Notes { get; } = [];

    /// <summary>Steps left out.</summary>
    public List<Said> LeftOut { get; } = [];

    /// <summary>Pilots, cutters and their changes.</summary>
    public List<Said> Tools { get; } = [];

    /// <summary>The earlier job, other heads of the engine, what was compared and decided; of each head the latest.</summary>
    public List<Said> OtherHeads { get; } = [];

    /// <summary>Corrections.</summary>
    public List<Correction> Corrections { get; } = [];

    /// <summary>Chosen limits.</summary>
    public List<LimitTold> ChosenLimits { get; } = [];

    /// <summary>Questioned entries.</summary>
    public IReadOnlyList<Questioned> Questions => [.. _asked.Select(q => q.Question)];

    /// <summary>Parts; a later one of the same kind at the same place has taken the earlier one's.</summary>
    public IReadOnlyList<PartTold> Parts =>
        [
            .. _parts.Select(
                (p, i) =>
                    new PartTold(
                        p.Part,
                        tell.Plan.PositionName(p.At.Position),
                        p.Number,
                        p.Lot,
                        !_parts.Skip(i + 1).Any(later => later.Part == p.Part && later.At.Position == p.At.Position),
                        p.By
                    )
            ),
        ];

    /// <summary>Takes an entry.</summary>
    public void Take(RecordEntry entry, Stamped by)
    {
        Correct(entry, by);
        foreach (RunEvent happened in entry.Events)
        {
            if (JobMark.Of(by.Entry, happened) is { } mark)
            {
                Marks.Add(new MarkTold(mark, tell.Plan.NameOf(mark.At), by));
            }

            Take(happened, by);
            if (EventPlace.Of(happened) is { } at && Telling.Result(happened) is { Length: > 0 } result)
            {
                _last[at] = (result, by);
            }
        }
    }

    private void Take(RunEvent happened, Stamped by)
    {
        switch (happened)
        {
            case RunEvent.PartFitted e:
                _parts.Add((e.At, e.Part, e.Number, e.Lot, by));
                break;
            case RunEvent.Noted e:
                Note(e, by);
                break;
            case RunEvent.LeftOut e:
                LeftOut.Add(Say(e.At, e.Reason, by));
                break;
            case RunEvent.LeavingOutTakenBack e:
                TakeBack(e, by);
                break;
            case RunEvent.StepDone e when Mentions(e.At) && e.Said.Length > 0:
                Tools.Add(Say(e.At, e.Said, by));
                break;
            case RunEvent.ChangeReported e:
                Tools.Add(new Said("changed", tell.Plan.PositionName(e.Position), e.Change, IsBad: false, by));
                break;
            case RunEvent.CameBack e:
                OtherHeads.Add(new Said("came back from the earlier job", e.Stamp, "", IsBad: false, by));
                break;
            case RunEvent.HeadLinked e:
                OtherHeads.Add(new Said("another head of this engine", e.Stamp, "", IsBad: false, by));
                break;
            case RunEvent.HeadsCompared e:
                Compare(e, by);
                break;
            case RunEvent.LimitChosen e:
                ChosenLimits.Add(new LimitTold(e, e.Position is { } at ? tell.Plan.PositionName(at) : "", by));
                break;
            case RunEvent.EntryQuestioned e:
                _asked.Add((e.At, new Questioned(tell.Plan.NameOf(e.At), e.Typed, e.Why, "", by)));
                break;
            case RunEvent.ReadingTaken e:
                Answer(e.At, Telling.Reading(e.Reading));
                break;
            case RunEvent.PassCut e:
                Answer(e.At, $"readout {e.Progress.Readout}");
                break;
            case RunEvent.ZeroSet e:
                Answer(e.At, $"readout {e.Zero.Set}");
                break;
            default:
                break;
        }
    }

    private void Answer(At at, string then)
    {
        int asked = _asked.FindLastIndex(q => q.At == at && q.Question.Then.Length == 0);
        if (asked >= 0)
        {
            _asked[asked] = (at, _asked[asked].Question with { Then = then });
        }
    }

    private void Compare(RunEvent.HeadsCompared heads, Stamped by)
    {
        OtherHeads.RemoveAll(said => said.Position == heads.Stamp && said.Text.Length > 0);
        string decided = heads.Together ? "they match; released together" : "released apart";
        OtherHeads.Add(
            new Said(
                "how they go out",
                heads.Stamp,
                heads.Reason.Length > 0 ? $"{decided}: {heads.Reason}" : decided,
                IsBad: !heads.Together,
                by
            )
        );
        OtherHeads.AddRange(
            heads.Figures.Select(figure => new Said(figure.Of, heads.Stamp, InWords(figure), figure.Differs, by))
        );
    }

    private static string InWords(HeadFigure figure)
    {
        string here = figure.Here.Length > 0 ? figure.Here : "not known";
        string there = figure.There.Length > 0 ? figure.There : "not known";
        string apart = figure.Difference.Length > 0 ? $", apart {figure.Difference}" : "";
        return $"here {here}, there {there}{apart}";
    }

    // What was left out and is to be done after all counts as corrected.
    private void TakeBack(RunEvent.LeavingOutTakenBack back, Stamped by)
    {
        Said place = Say(back.At, "", by);
        int last = LeftOut.FindLastIndex(l => l.About == place.About && l.Position == place.Position);
        if (last >= 0)
        {
            Said was = LeftOut[last];
            LeftOut.RemoveAt(last);
            Corrections.Add(
                new(tell.Plan.NameOf(back.At), $"left out: {was.Text}", was.By, "to be done", back.Reason, by)
            );
        }
    }

    private void Note(RunEvent.Noted note, Stamped by)
    {
        Said said = note.At is { } at ? Say(at, note.Text, by) : new Said("", "", note.Text, IsBad: false, by);
        Notes.Add(said);
        if (note.At is { } where && Mentions(where))
        {
            Tools.Add(said);
        }
    }

    private void Correct(RecordEntry entry, Stamped by)
    {
        if (entry.Events.OfType<RunEvent.EntryCorrected>().FirstOrDefault() is not { } corrected)
        {
            return;
        }

        string now = string.Join("; ", entry.Events.Select(Telling.Result).Where(r => r.Length > 0));
        bool known = _last.TryGetValue(corrected.At, out (string Text, Stamped By) before);
        Corrections.Add(
            new Correction(
                tell.Plan.NameOf(corrected.At),
                known ? before.Text : "",
                known ? before.By : null,
                now,
                corrected.Reason,
                by
            )
        );
        int part = _parts.FindLastIndex(p => p.At == corrected.At);
        if (part >= 0)
        {
            _parts.RemoveAt(part);
        }
    }

    private Said Say(At at, string text, Stamped by) =>
        new(tell.Plan.Steps[at.Step].FullName, tell.Plan.PositionName(at.Position), text, IsBad: false, by);

    // A step that tells the operator to note pilot or cutter.
    private bool Mentions(At at)
    {
        Step step = tell.Plan.Steps[at.Step];
        return step.Work is StepWork.Do
            && (
                step.Say.Contains("pilot", StringComparison.OrdinalIgnoreCase)
                || step.Say.Contains("cutter", StringComparison.OrdinalIgnoreCase)
            );
    }
}
