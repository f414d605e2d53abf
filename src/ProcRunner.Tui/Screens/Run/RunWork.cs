using System.Globalization;
using ProcRunner.Procedures;
using ProcRunner.Records;
using ProcRunner.Runs;
using ProcRunner.Runs.Doubts;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Lines;
using ProcRunner.Tui.Screens.Shop;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>
/// What the pages of one run share: the job, the step in hand, what was typed at it so far, the cautions acknowledged, what
/// was recorded last.
/// </summary>
internal sealed class RunWork
{
    private readonly HashSet<(int Stage, string Person)> _acknowledged = [];
    private readonly Dictionary<At, EntryForm> _forms = [];
    private At? _chosen;
    private long _seen = -1;
    private long _alarmed = -1;
    private (decimal Travel, bool StopsShort)? _due;
    private Outlook? _outlook;
    private Prompt? _prompt;

    /// <summary>Takes up a job; what was recorded last is said first, so that nobody enters it twice.</summary>
    public RunWork(JobRun job)
    {
        Job = job;
        Said = job.State.Sequence > 1 ? $"recorded last: {LastRecorded.Of(job.State, NameOf)}" : "";
    }

    /// <summary>The lesson that the job is; null on a customer's head.</summary>
    public LessonRun? Lesson { get; init; }

    /// <summary>True once a lesson's first page was read.</summary>
    public bool IsBegun { get; private set; }

    /// <summary>The shop around the job, for what is missing in it; null where there is none to be changed.</summary>
    public ShopSession? Session { get; init; }

    /// <summary>The job.</summary>
    public JobRun Job { get; }

    /// <summary>The run.</summary>
    public RunState State => Job.State;

    /// <summary>What is worked to.</summary>
    public Plan Plan => Job.State.Plan;

    /// <summary>What was recorded last, in words; empty before anything was.</summary>
    public string Said { get; private set; }

    /// <summary>The run as a whole.</summary>
    public Outlook Outlook
    {
        get
        {
            Refresh();
            return _outlook!;
        }
    }

    /// <summary>The prompt of the step in hand; null when none is open.</summary>
    public Prompt? Prompt
    {
        get
        {
            Refresh();
            return _prompt;
        }
    }

    /// <summary>The cautions of the stage in hand, until whoever is at work has acknowledged them; empty otherwise.</summary>
    public IReadOnlyList<Caution> CautionsDue =>
        Prompt is { Step.StageIndex: var stage } && !_acknowledged.Contains((stage, Job.Person))
            ? Plan.Procedure.Stages[stage].Cautions
            : [];

    /// <summary>Takes a lesson's first page as read.</summary>
    public void Begin() => IsBegun = true;

    /// <summary>Takes the cautions of the stage in hand as read.</summary>
    public void Acknowledge() => _acknowledged.Add((Prompt!.Step.StageIndex, Job.Person));

    /// <summary>True the first time a result out of spec is shown: coming back to it from the menu rings no bell.</summary>
    public bool TakeAlarm()
    {
        bool due = _alarmed != State.Sequence;
        _alarmed = State.Sequence;
        return due;
    }

    /// <summary>What was typed so far at a step; kept while another one is looked at.</summary>
    public EntryForm FormOf(Prompt prompt)
    {
        if (!_forms.TryGetValue(prompt.At, out EntryForm? form) || !form.Fits(prompt))
        {
            form = new EntryForm(
                prompt,
                Prompter.FieldAt(State, prompt.At),
                (places, first) => PlaceDoubt.Of(State, Job.Shop, prompt.At, places, first)
            );
            _forms[prompt.At] = form;
        }

        return form;
    }

    /// <summary>Goes to another open step.</summary>
    public void Go(At at)
    {
        _chosen = at;
        _seen = -1;
    }

    /// <summary>Gives a command to the job; what was recorded is kept to be shown.</summary>
    public JobAnswer Do(RunCommand command)
    {
        _due = Prompt is { Awaits: Awaited.Readout, Progress: { } progress, Target: { } target }
            ? (progress.Travel.Value + target.Left.Value, target.StopsShort)
            : null;
        JobAnswer answer = Took(Job.Do(command));
        _due = null;
        return answer;
    }

    /// <summary>Takes over what came of a command.</summary>
    public JobAnswer Took(JobAnswer answer)
    {
        if (answer is JobAnswer.Recorded recorded)
        {
            string[] said =
            [
                .. recorded
                    .Events.OrderBy(e => e is RunEvent.WentStale or RunEvent.Reopened or RunEvent.GaugeChosen)
                    .Select(Wording)
                    .Where(s => s.Length > 0),
            ];
            Said = said.Length == 0 ? "recorded" : $"{Where(recorded.Events, said[0])}{Shortly(said)}";
            _forms.Clear();
        }

        return answer;
    }

    /// <summary>A person's name by id.</summary>
    public string NameOf(string id) => Job.Shop.People.TryGetValue(id, out People.Person? person) ? person.Name : id;

    // What is questioned stands on the screen at full length.
    private string Wording(RunEvent happened) =>
        happened switch
        {
            RunEvent.EntryQuestioned => "not taken yet",
            RunEvent.HandedOver e => $"handed over to {NameOf(e.To)}",
            RunEvent.PassCut e when Past(e.Progress) is { Length: > 0 } past =>
                $"readout {e.Progress.Readout}, {past}: lift, wipe, measure",
            _ => LineWording.Of(State, happened),
        };

    // A tool that ran on, or a slip of the finger, is said before anything is measured.
    private string Past(CutProgress progress)
    {
        if (_due is not { } due || Job.Shop.Readout is not { } readout)
        {
            return "";
        }

        decimal past = Math.Round(progress.Travel.Value - due.Travel, readout.Step.Scale);
        return past >= readout.Step
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"{past} {readout.Unit.Symbol} past the {(due.StopsShort ? "stop" : "aim")}"
            )
            : "";
    }

    // One line for all: that a reading is recorded goes without saying where more follows.
    private static string Shortly(IEnumerable<string> said) =>
        string.Join("; ", said).Replace(": recorded; ", "; ", StringComparison.Ordinal);

    // By then the screen is at another step: what was recorded says where it belongs.
    private string Where(IReadOnlyList<RunEvent> events, string said)
    {
        bool saysItself = events.Any(e => e is RunEvent.ChoiceMade or RunEvent.SignedOff or RunEvent.JobReleased);
        if (saysItself || events.Select(EventPlace.Of).FirstOrDefault(at => at is not null) is not { } at)
        {
            return "";
        }

        string step = Plan.Steps[at.Step].Name;
        string place = at.Position == At.Head ? "" : $"{Plan.PositionName(at.Position)}  ";
        return said.Contains(step, StringComparison.Ordinal) ? place : $"{place}{step}: ";
    }

    private void Refresh()
    {
        if (_seen == State.Sequence)
        {
            return;
        }

        _seen = State.Sequence;
        _outlook = new Outlook(State);
        _chosen = _chosen is { } at && _outlook.ViewOf(at) == StepView.Open ? at : null;
        _prompt = (_chosen ?? Prompter.Next(State)) is { } next ? Prompter.At(State, Job.Shop, next) : null;
    }
}
