using ProcRunner.Procedures;
using ProcRunner.Records.Story;
using ProcRunner.Runs;

namespace ProcRunner.Records;

/// <summary>Follows every result out of spec from its first reading to how it was settled.</summary>
internal sealed class CaseBook(Telling tell)
{
    private readonly List<Course> _cases = [];
    private readonly Dictionary<At, Course> _open = [];
    private readonly Dictionary<At, RunEvent.PassCut> _passes = [];

    /// <summary>Takes an entry.</summary>
    public void Take(RecordEntry entry, Stamped by)
    {
        foreach (RunEvent happened in entry.Events)
        {
            switch (happened)
            {
                case RunEvent.PassCut e:
                    _passes[e.At] = e;
                    break;
                case RunEvent.ReadingTaken e:
                    Reading(e, by);
                    break;
                case RunEvent.PartFitted e:
                    Fit(e, by);
                    break;
                case RunEvent.FindingNoted e:
                    Finding(e, by);
                    break;
                case RunEvent.WayTaken { Kind: WayKind.Again } e:
                    Add(e.At, $"Decided: {e.Way}{Because(e.Reason)}.{Undone(entry)}", by);
                    break;
                case RunEvent.WayTaken { Kind: not (WayKind.Concession or WayKind.Scrap) } e:
                    Add(e.At, $"Decided: {e.Way}{Because(e.Reason)}.{Undone(entry)}", by);
                    if (_open.TryGetValue(e.At, out Course? worked))
                    {
                        worked.WasWorkedOn = true;
                    }

                    break;
                case RunEvent.Conceded e:
                    if (_open.TryGetValue(e.At, out Course? permitted))
                    {
                        permitted.PermittedBy = e.Mark.Name;
                    }

                    Add(e.At, $"Permission to use it as it is, signed by {e.Mark.Name}{Because(e.Reason)}.", by);
                    End(
                        e.At,
                        CaseEnd.Conceded,
                        $"Used as it is: permitted in writing by {e.Mark.Name}{Because(e.Reason)}.",
                        by
                    );
                    break;
                case RunEvent.HeadScrapped e:
                    Add(e.At, $"Head scrapped, signed by {e.Mark.Name}{Because(e.Reason)}.", by);
                    End(e.At, CaseEnd.Scrapped, "The head was given up.", by);
                    break;
                case RunEvent.EntryCorrected e:
                    Add(e.At, $"The entry is corrected{Because(e.Reason)}.", by);
                    break;
                case RunEvent.WentStale e:
                    Move(e);
                    break;
                default:
                    break;
            }
        }
    }

    /// <summary>The cases, in the order they began.</summary>
    public IReadOnlyList<Case> All(RunState state) => [.. _cases.Select(c => Told(state, c))];

    private Case Told(RunState state, Course course)
    {
        Step step = tell.Plan.Steps[course.At.Step];
        string since = course.End is CaseEnd.Conceded or CaseEnd.Settled ? Since(state, course) : "";
        return new Case(
            tell.Plan.Procedure.Stages[step.StageIndex].Name,
            step.Name,
            tell.Plan.PositionName(course.At.Position),
            course.Lines,
            course.Fault,
            course.End,
            (course.Outcome.Length > 0 ? course.Outcome : NotSettled(state, course.At)) + since,
            since.Length == 0,
            course.End == CaseEnd.Conceded ? course.PermittedBy : "",
            !course.WasWorkedOn
        );
    }

    // What settled it holds for the result it was said of: work that came later had it taken again, and that counts.
    private string Since(RunState state, Course course)
    {
        At at = course.At;
        if (tell.Plan.Steps[at.Step].Taking is not { } taking)
        {
            return state.Find(at) is { } done && done.Sequence > course.EndedIn ? " It was done over since." : "";
        }

        if (state.Value(taking.Characteristic, at.Position) is not { } value)
        {
            return "";
        }

        string stale = value.Stale ? $" It no longer holds: {value.Cause}." : "";
        if (value.Sequence <= course.EndedIn)
        {
            return stale;
        }

        string limits = Telling.Window(value.Judgement);
        string why =
            course.Moved.Length > 0
                ? $" What it rests on moved after that ({course.Moved}), so it was measured again"
                : " It was measured again since";
        string held =
            value.Judgement.Verdict == Verdict.In ? "within"
            : value.Judgement.Verdict == Verdict.Out ? "outside"
            : "held against";
        string against = limits.Length > 0 ? $", {held} the limits that hold now ({limits})" : "";
        return $"{why}, at {tell.Plan.Steps[value.ByStep].FullName}: {value.Value.ToDisplay()}{against}, entry {Telling.Number(value.Sequence)}. That value is the final one.{stale}";
    }

    private static string NotSettled(RunState state, At at) =>
        state.Standing == JobStanding.Scrapped ? "The head was given up."
        : state.Find(at) is { Standing: StepStanding.Waiting or StepStanding.InHand }
            ? "Not settled yet: it is still to be taken again."
        : "Not settled yet.";

    private void Reading(RunEvent.ReadingTaken taken, Stamped by)
    {
        string words = Telling.Reading(taken.Reading);
        if (!taken.Reading.Good)
        {
            string faults = string.Join("; ", taken.Reading.Faults);
            string pass = _passes.Remove(taken.At, out RunEvent.PassCut? cut)
                ? $"Cut until the readout showed {cut.Progress.Readout}; the target was {cut.Target.Show}. "
                : "";
            Begin(taken.At, $"{pass}Measured {words}. Out of spec: {faults}.", faults, by);
            return;
        }

        if (taken.Reading.Judgement.Verdict == Verdict.Short)
        {
            Add(taken.At, $"Measured {words}: not at its aim yet, the cut goes on.", by);
            return;
        }

        string limits = Telling.Window(taken.Reading.Judgement);
        string against = limits.Length > 0 ? $", within its limits ({limits})" : ", good";
        Add(taken.At, $"Measured again: {words}{against}.", by);
        End(
            taken.At,
            CaseEnd.Settled,
            $"Settled: {taken.Reading.Characteristic} {taken.Reading.Value.ToDisplay()}{against}.",
            by
        );
    }

    private void Finding(RunEvent.FindingNoted found, Stamped by)
    {
        string what = tell.Plan.Steps[found.At.Step].Subject;
        if (!found.Good)
        {
            Begin(found.At, $"Inspected {what}: {found.Finding}. Out of spec.", $"{what}: {found.Finding}", by);
            return;
        }

        Add(found.At, $"Inspected again, {what}: {found.Finding}, good.", by);
        End(found.At, CaseEnd.Settled, $"Settled: {what}: {found.Finding}.", by);
    }

    private void Begin(At at, string text, string fault, Stamped by)
    {
        if (!_open.TryGetValue(at, out Course? course))
        {
            _cases.Add(_open[at] = course = new Course(at));
        }

        (course.Fault, course.End, course.Outcome) = (fault, CaseEnd.Open, "");
        Add(at, text, by);
    }

    // A part fitted where a result waits for what was decided about it is what was done for it.
    private void Fit(RunEvent.PartFitted part, Stamped by)
    {
        string number = part.Number.Length > 0 ? $" {part.Number}, lot {part.Lot}" : "";
        foreach (Course course in _open.Values.Where(c => c is { End: CaseEnd.Open, WasWorkedOn: true }))
        {
            if (course.At.Position == part.At.Position)
            {
                course.Lines.Add(new CaseLine($"Fitted: {part.Part}{number}.", by));
            }
        }
    }

    private void Add(At at, string text, Stamped by)
    {
        if (_open.TryGetValue(at, out Course? course))
        {
            course.Lines.Add(new CaseLine(text, by));
        }
    }

    // A concession can be overtaken by a later reading at the same place, so its case goes on.
    private void End(At at, CaseEnd end, string outcome, Stamped by)
    {
        if (_open.TryGetValue(at, out Course? course))
        {
            (course.End, course.Outcome, course.EndedIn, course.Moved) = (end, outcome, by.Entry, "");
            if (end != CaseEnd.Conceded)
            {
                _open.Remove(at);
            }
        }
    }

    private void Move(RunEvent.WentStale stale)
    {
        foreach (Course course in _cases.Where(c => c.EndedIn > 0 && c.Moved.Length == 0))
        {
            string of = tell.Plan.Steps[course.At.Step].Taking?.Characteristic ?? "";
            if (
                tell.Plan.TryCharacteristic(of, out int index)
                && stale.Items.Any(i => i.Characteristic == index && i.Position == course.At.Position)
            )
            {
                course.Moved = stale.Cause;
            }
        }
    }

    // What the decision took back, in the same entry.
    private string Undone(RecordEntry entry)
    {
        At[] again = [.. entry.Events.OfType<RunEvent.Reopened>().SelectMany(e => e.Items).Distinct()];
        return again.Length == 0
            ? ""
            : $" To be done again for it: {string.Join(", ", again.Select(at => tell.Plan.Steps[at.Step].FullName).Distinct())}.";
    }

    private static string Because(string reason) => reason.Length > 0 ? $", because: {reason}" : "";

    private sealed class Course(At at)
    {
        public At At { get; } = at;

        public List<CaseLine> Lines { get; } = [];

        public string Fault { get; set; } = "";

        public CaseEnd End { get; set; }

        public bool WasWorkedOn { get; set; }

        public string Outcome { get; set; } = "";

        public string PermittedBy { get; set; } = "";

        // The entry in which it was settled, and what made that stale since.
        public long EndedIn { get; set; }

        public string Moved { get; set; } = "";
    }
}
