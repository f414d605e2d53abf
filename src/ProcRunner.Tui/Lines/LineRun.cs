using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Lines;

/// <summary>
/// A run in line mode: prompts out, one entry a line in. On piped input the first line that is refused, or that doesn't
/// answer a result out of spec, ends the run with status 1 and is named.
/// </summary>
internal sealed class LineRun
{
    private readonly LineTalk _talk;
    private readonly JobWords _jobWords;
    private readonly StepWords _stepWords;

    public LineRun(JobRun job, LineInput input, TextWriter output)
    {
        _talk = new LineTalk(job, input, new LinePrinter(output));
        (_jobWords, _stepWords) = (new JobWords(_talk), new StepWords(_talk));
    }

    /// <summary>What stands beside a prompt: a lesson's gauges; null: nothing.</summary>
    public Func<Prompt, IEnumerable<string>>? Beside { get; init; }

    /// <summary>What is said besides when it is asked why: a lesson's coach; null: nothing.</summary>
    public Func<Prompt, IEnumerable<string>>? Hint { get; init; }

    /// <summary>Ends the run early, with what there is to say then: a lesson that is over; null: nothing does.</summary>
    public Func<IEnumerable<string>?>? Ending { get; init; }

    /// <summary>Takes a line before line mode does: what came of it; null: nothing, it is line mode's.</summary>
    public Func<string, Prompt, OwnLine?>? Own { get; init; }

    /// <summary>The words of <see cref="Own"/>, for help.</summary>
    public IReadOnlyList<LineWord> OwnWords { get; init; } = [];

    private RunState State => _talk.State;

    private bool IsClosed => State.Standing is JobStanding.Released or JobStanding.Scrapped;

    /// <summary>Runs until the input ends, the person leaves, or the job is closed; the exit status.</summary>
    public int Run()
    {
        Open();
        if (IsClosed)
        {
            string closed = JobProjection.StandingWord(State.Standing);
            _talk.Printer.Line(
                $"The job is {closed}; its trail is closed. procrunner show {State.Job!.Stamp} shows it."
            );
            _talk.Printer.Proof(_talk.Job.Proof);
            return StatusOfClosed();
        }

        ShowPrompt();
        while (_talk.Input.Next() is { } line)
        {
            if (Line(line.Trim()) is { } status)
            {
                return status;
            }
        }

        return EndOfInput();
    }

    private void Open()
    {
        _talk.Printer.Opening(State, _talk.Job.Person);
        if (DemoShop.Is(_talk.Job.Shop))
        {
            _talk.Printer.Line(
                $"Demo shop: all of it is invented, its sign-offs prove nothing. PINs: {DemoShop.Pins}."
            );
        }

        _talk.Printer.Last(State, _talk.Job.LastEvents);
    }

    // The exit status when this line ends the run; null when it goes on.
    private int? Line(string text)
    {
        if (text.Length == 0 || LineWords.After(LineWords.Remark, text) is not null)
        {
            return null;
        }

        if (LineWords.After(LineWords.Quit, text) is "")
        {
            return _talk.Input.IsPiped ? EndOfInput() : Status.Done;
        }

        bool shown = Take(text);
        if (_talk.Refused.Length > 0 && _talk.Input.IsPiped)
        {
            _talk.Printer.Line(_talk.Held.Stopped(State, _talk.Input.LineNumber, _talk.Refused));
            return Status.No;
        }

        if (Ending?.Invoke() is { } last)
        {
            foreach (string said in last)
            {
                _talk.Printer.Line(said);
            }

            return Status.Done;
        }

        if (IsClosed)
        {
            return StatusOfClosed();
        }

        if (!shown)
        {
            ShowPrompt();
        }

        return null;
    }

    private int StatusOfClosed() => State.Standing == JobStanding.Released ? Status.Done : Status.No;

    // True when nothing needs to be shown again.
    private bool Take(string text)
    {
        _talk.Begin();
        if (_talk.CurrentPrompt() is { } now && Own?.Invoke(text, now) is { } own)
        {
            return TakeOwn(own);
        }

        if (LineWords.After(LineWords.Help, text) is "")
        {
            _talk.Printer.Help(State, _talk.CurrentPrompt(), OwnWords);
            return true;
        }

        if (LineWords.After(LineWords.At, text) is { } place)
        {
            Assert(place);
            return true;
        }

        if (LineWords.After(LineWords.Why, text) is "" && _talk.CurrentPrompt() is { } prompt)
        {
            _talk.Printer.Why(prompt);
            foreach (string line in Hint?.Invoke(prompt) ?? [])
            {
                _talk.Printer.Line($"    {line}");
            }

            return true;
        }

        if (LineWords.After(LineWords.Work, text) is { } work)
        {
            foreach (string line in WorkLine.Of(work))
            {
                _talk.Printer.Line(line);
            }

            return true;
        }

        if (LineWords.After(LineWords.Go, text) is { } step)
        {
            Go(step);
            return false;
        }

        return _jobWords.Take(text) ?? _stepWords.Take(text);
    }

    private bool TakeOwn(OwnLine own)
    {
        foreach (string line in own.Said)
        {
            _talk.Printer.Line(line);
        }

        return own.Refused.Length == 0 || _talk.Refuse(own.Refused, []);
    }

    private void Assert(string place)
    {
        (At? wanted, string fault) = StepFinder.Find(State, place);
        At? focus = _talk.Focus();
        if (wanted is null)
        {
            _talk.Refuse(fault, []);
        }
        else if (wanted != focus)
        {
            string here = focus is { } at ? State.Plan.NameOf(at) : "nowhere";
            IEnumerable<string> faults = _talk.CurrentPrompt() is { Awaits: Awaited.WayOn } prompt ? prompt.Faults : [];
            _talk.Refuse($"expected {State.Plan.NameOf(wanted.Value)}; the run is at {here}", [.. faults]);
        }
    }

    private void Go(string step)
    {
        (At? at, string fault) = StepFinder.Find(State, step);
        if (at is not { } place)
        {
            _talk.Refuse(fault, []);
        }
        else if (new Outlook(State).ViewOf(place) != StepView.Open)
        {
            string first = new Outlook(State).WaitsFor(place);
            _talk.Refuse($"{State.Plan.NameOf(place)} isn't open{(first.Length > 0 ? $": first {first}" : "")}", []);
        }
        else
        {
            _talk.Go(place);
        }
    }

    private int EndOfInput()
    {
        bool refused =
            _talk.CurrentPrompt() is { } prompt && (prompt.Awaits == Awaited.WayOn || prompt.Question is not null);
        if (refused && _talk.Input.IsPiped)
        {
            _talk.Printer.Line(_talk.Held.Stopped(State, _talk.Input.LineNumber + 1, "the input ends"));
        }

        return refused ? Status.No : Status.Done;
    }

    private void ShowPrompt()
    {
        if (State.Standing == JobStanding.Held)
        {
            _talk.Printer.Line($"The job is on hold: {State.StandingReason}. take up goes on.");
        }
        else if (_talk.CurrentPrompt() is { } prompt)
        {
            _talk.Printer.Prompt(State, prompt);
            foreach (string line in Beside?.Invoke(prompt) ?? [])
            {
                _talk.Printer.Line(line);
            }
        }
    }
}
