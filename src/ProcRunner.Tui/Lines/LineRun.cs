using System.Globalization;
using ProcRunner.Procedures;
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
    private readonly JobRun _job;
    private readonly LineInput _input;
    private readonly LinePrinter _printer;
    private readonly RefusedLine _held = new();
    private At? _focus;
    private string _refused = "";

    public LineRun(JobRun job, LineInput input, TextWriter output)
    {
        (_job, _input, _printer) = (job, input, new LinePrinter(output));
    }

    /// <summary>What stands beside a prompt: a lesson's gauges; null: nothing.</summary>
    public Func<Prompt, IEnumerable<string>>? Beside { get; init; }

    /// <summary>What is said besides when it is asked why: a lesson's coach; null: nothing.</summary>
    public Func<Prompt, IEnumerable<string>>? Hint { get; init; }

    /// <summary>Ends the run early, with what there is to say then: a lesson that is over; null: nothing does.</summary>
    public Func<IEnumerable<string>?>? Ending { get; init; }

    /// <summary>Takes a line before line mode does: what came of it; null: nothing, it is line mode's.</summary>
    public Func<string, Prompt, OwnLine?>? Own { get; init; }

    private RunState State => _job.State;

    /// <summary>Runs until the input ends, the person leaves, or the job is closed; the exit status.</summary>
    public int Run()
    {
        _printer.Opening(State, _job.Person);
        if (DemoShop.Is(_job.Shop))
        {
            _printer.Line($"Demo shop: all of it is invented, its sign-offs prove nothing. PINs: {DemoShop.Pins}.");
        }

        _printer.Last(State, _job.LastEvents);
        if (State.Standing is JobStanding.Released or JobStanding.Scrapped)
        {
            string closed = JobProjection.StandingWord(State.Standing);
            _printer.Line($"The job is {closed}; its trail is closed. procrunner show {State.Job!.Stamp} shows it.");
            _printer.Proof(_job.Proof);
            return State.Standing == JobStanding.Released ? Status.Done : Status.No;
        }

        ShowPrompt();
        while (_input.Next() is { } line)
        {
            string text = line.Trim();
            if (text.Length == 0 || LineWords.After(LineWords.Remark, text) is not null)
            {
                continue;
            }

            if (LineWords.After(LineWords.Quit, text) is "")
            {
                return _input.IsPiped ? EndOfInput() : Status.Done;
            }

            bool shown = Take(text);
            if (_refused.Length > 0 && _input.IsPiped)
            {
                _printer.Line(_held.Stopped(State, _input.LineNumber, _refused));
                return Status.No;
            }

            if (Ending?.Invoke() is { } last)
            {
                foreach (string said in last)
                {
                    _printer.Line(said);
                }

                return Status.Done;
            }

            if (State.Standing is JobStanding.Released or JobStanding.Scrapped)
            {
                return State.Standing == JobStanding.Released ? Status.Done : Status.No;
            }

            if (!shown)
            {
                ShowPrompt();
            }
        }

        return EndOfInput();
    }

    // True when nothing needs to be shown again.
    private bool Take(string text)
    {
        _refused = "";
        if (CurrentPrompt() is { } now && Own?.Invoke(text, now) is { } own)
        {
            return TakeOwn(own);
        }

        if (LineWords.After(LineWords.Help, text) is "")
        {
            _printer.Help(State, CurrentPrompt());
            return true;
        }

        if (LineWords.After(LineWords.At, text) is { } place)
        {
            Assert(place);
            return true;
        }

        if (LineWords.After(LineWords.Why, text) is "" && CurrentPrompt() is { } prompt)
        {
            _printer.Why(prompt);
            foreach (string line in Hint?.Invoke(prompt) ?? [])
            {
                _printer.Line($"    {line}");
            }

            return true;
        }

        if (LineWords.After(LineWords.Work, text) is { } work)
        {
            foreach (string line in WorkLine.Of(work))
            {
                _printer.Line(line);
            }

            return true;
        }

        if (LineWords.After(LineWords.Go, text) is { } step)
        {
            Go(step);
            return false;
        }

        return JobWord(text) ?? StepWord(text);
    }

    private bool TakeOwn(OwnLine own)
    {
        foreach (string line in own.Said)
        {
            _printer.Line(line);
        }

        return own.Refused.Length == 0 || Refuse(own.Refused, []);
    }

    private bool? HeadsWord(string text)
    {
        if (LineWords.After(LineWords.HeadsTogether, text) is "")
        {
            return Answer(_job.DecideHeads(together: true, ""));
        }

        if (LineWords.After(LineWords.HeadsApart, text) is { } apart)
        {
            return Answer(_job.DecideHeads(together: false, LineWords.Because(apart).Reason));
        }

        if (LineWords.After(LineWords.Heads, text) is "" && _job.Store is { } store)
        {
            foreach (
                string line in JobLinks.Heads(store, State).DefaultIfEmpty("No other head is linked with this one.")
            )
            {
                _printer.Line(line);
            }

            return true;
        }

        return null;
    }

    private bool? JobWord(string text)
    {
        if (LineWords.After(LineWords.Note, text) is { } note)
        {
            return Answer(_job.Do(new RunCommand.Note(Focus(), note)));
        }

        if (LineWords.After(LineWords.Hold, text) is { } hold)
        {
            return Answer(_job.Do(new RunCommand.Hold(LineWords.Because(hold).Reason)));
        }

        if (LineWords.After(LineWords.TakeUp, text) is "")
        {
            return Answer(_job.Do(new RunCommand.TakeUp()));
        }

        if (LineWords.After(LineWords.HandOver, text) is { } to)
        {
            return Answer(_job.Do(new RunCommand.HandOver(to)));
        }

        if (HeadsWord(text) is { } shown)
        {
            return shown;
        }

        if (LineWords.After(LineWords.Gauge, text) is { } gauge && gauge.Split('=') is [var kind, var id])
        {
            return Answer(_job.Do(new RunCommand.ChooseGauge(kind.Trim(), id.Trim())));
        }

        if (LineWords.After(LineWords.Limit, text) is { } limit)
        {
            return Limit(limit);
        }

        if (LineWords.After(LineWords.TakeBack, text) is { } back)
        {
            return TakeBack(back);
        }

        return LineWords.After(LineWords.Changed, text) is { } change
            ? Answer(_job.Do(new RunCommand.Report(change, Focus()?.Position ?? At.Head)))
            : null;
    }

    private bool StepWord(string text)
    {
        if (LineWords.After(LineWords.Correct, text) is { } correction)
        {
            return Correct(correction);
        }

        if (Focus() is not { } at)
        {
            return Refuse("no step is open", []);
        }

        if (LineWords.After(LineWords.LeaveOut, text) is { } leave)
        {
            return Answer(_job.Do(new RunCommand.LeaveOut(at, LineWords.Because(leave).Reason)));
        }

        StepWork work = State.Plan.Steps[at.Step].Work;
        if (LineWords.After(LineWords.Sign, text) is { } sign)
        {
            return work is StepWork.Sign
                ? Sign(at, sign)
                : Refuse($"the run is at {State.Plan.NameOf(at)}, which is no sign-off", []);
        }

        Prompt prompt = Prompter.At(State, _job.Shop, at);
        if (prompt.Awaits == Awaited.WayOn)
        {
            return Way(at, prompt, text);
        }

        if (LineWords.After(LineWords.Lift, text) is "" && work is StepWork.Cut)
        {
            return Answer(_job.Do(new RunCommand.LiftToMeasure(at)));
        }

        return LineWords.After(LineWords.Enough, text) is ""
            ? Answer(_job.Do(new RunCommand.EndCut(at)))
            : Answer(_job.Do(new RunCommand.Enter(at, text)));
    }

    private bool Way(At at, Prompt prompt, string text)
    {
        (string words, string rest) = LineWords.Because(text);
        string name = words.Split(" by ", 2, StringSplitOptions.TrimEntries)[0];
        WayOn? way = prompt.WaysOn.FirstOrDefault(w => string.Equals(w.Text, name, StringComparison.OrdinalIgnoreCase));
        if (way is null)
        {
            return Refuse(
                $"\"{text}\" is none of the ways on from {State.Plan.NameOf(at)}: {string.Join("; ", prompt.Faults)}",
                [.. prompt.WaysOn.Select(LinePrinter.FormOf)]
            );
        }

        if (way.Kind is not (WayKind.Concession or WayKind.Scrap))
        {
            return Answer(_job.Do(new RunCommand.TakeWay(at, way.Text, rest, null)));
        }

        string[] parts = rest.Split(", by ", 2, StringSplitOptions.TrimEntries);
        string[] who = parts.Length == 2 ? parts[1].Split(' ', StringSplitOptions.RemoveEmptyEntries) : [];
        if (parts[0].Length == 0 || who.Length == 0)
        {
            return Refuse($"a {way.Text} needs a reason and a lead", [LinePrinter.FormOf(way)]);
        }

        string pin = who is [_, "pin", var given] ? given : _input.Secret($"PIN of {who[0]}: ");
        return Answer(_job.TakeWayByLead(at, way, parts[0], who[0], pin));
    }

    private bool Sign(At at, string text)
    {
        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        string person = _job.Person;
        string? pin = null;
        string? beside = null;
        string? besidePin = null;
        for (int i = 0; i + 1 < words.Length; i += 2)
        {
            switch (words[i])
            {
                case "as":
                    person = words[i + 1];
                    break;
                case "pin" when beside is null:
                    pin = words[i + 1];
                    break;
                case "pin":
                    besidePin = words[i + 1];
                    break;
                case "beside":
                    beside = words[i + 1];
                    break;
                default:
                    return Refuse($"\"{words[i]}\" means nothing in a sign-off", [LineWords.Sign.Form]);
            }
        }

        pin ??= _input.Secret($"PIN of {person}: ");
        besidePin ??= beside is null ? null : _input.Secret($"PIN of {beside}: ");
        return Answer(_job.Sign(at, person, pin, beside, besidePin));
    }

    private bool Correct(string text)
    {
        (string entry, string reason) = LineWords.Because(text);
        At? at = State.LastAt ?? Focus();
        int colon = entry.IndexOf(':', StringComparison.Ordinal);
        if (colon > 0)
        {
            (at, string fault) = StepFinder.Find(State, entry[..colon].Trim());
            if (at is null)
            {
                return Refuse(fault, []);
            }

            entry = entry[(colon + 1)..].Trim();
        }

        return at is { } place
            ? Answer(_job.Do(new RunCommand.Correct(place, entry, reason)))
            : Refuse("no step is open", [LineWords.Correct.Form]);
    }

    private bool TakeBack(string text)
    {
        (string place, string reason) = LineWords.Because(text);
        (At? at, string fault) = StepFinder.Find(State, place);
        return at is { } found
            ? Answer(_job.Do(new RunCommand.TakeBack(found, reason)))
            : Refuse(fault, [LineWords.TakeBack.Form]);
    }

    private bool Limit(string text)
    {
        (string before, string reason) = LineWords.Because(text);
        LimitLine? line = LimitLine.Read(State, before);
        return line is null
            ? Refuse($"\"{text}\" can't be read as a limit", [LineWords.Limit.Form])
            : Answer(
                _job.Do(new RunCommand.ChooseLimit(line.Name, line.Position, line.Low, line.Aim, line.High, reason))
            );
    }

    private void Assert(string place)
    {
        (At? wanted, string fault) = StepFinder.Find(State, place);
        At? focus = Focus();
        if (wanted is null)
        {
            Refuse(fault, []);
        }
        else if (wanted != focus)
        {
            string here = focus is { } at ? State.Plan.NameOf(at) : "nowhere";
            IEnumerable<string> faults = CurrentPrompt() is { Awaits: Awaited.WayOn } prompt ? prompt.Faults : [];
            Refuse($"expected {State.Plan.NameOf(wanted.Value)}; the run is at {here}", [.. faults]);
        }
    }

    private void Go(string step)
    {
        (At? at, string fault) = StepFinder.Find(State, step);
        if (at is not { } place)
        {
            Refuse(fault, []);
        }
        else if (new Outlook(State).ViewOf(place) != StepView.Open)
        {
            string first = new Outlook(State).WaitsFor(place);
            Refuse($"{State.Plan.NameOf(place)} isn't open{(first.Length > 0 ? $": first {first}" : "")}", []);
        }
        else
        {
            _focus = place;
        }
    }

    private bool Answer(JobAnswer answer)
    {
        switch (answer)
        {
            case JobAnswer.Recorded recorded:
                _printer.Recorded(State, recorded.Events);
                _printer.Corrected(State, recorded.Events);
                _held.Remember(State, recorded.Events, _input.LineNumber);
                _printer.Proof(_job.Proof);
                return false;
            case JobAnswer.Refused refused:
                return Refuse(refused.Why, refused.WhatToDo);
            case JobAnswer.NotWritten failed:
                return Refuse(
                    $"NOT WRITTEN: {failed.Why} Nothing was recorded.",
                    ["Mend the cause, then enter it again."]
                );
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    private bool Refuse(string why, IReadOnlyList<string> whatToDo)
    {
        _refused = why;
        _printer.Refused(why, whatToDo);
        return true;
    }

    private int EndOfInput()
    {
        bool refused = CurrentPrompt() is { } prompt && (prompt.Awaits == Awaited.WayOn || prompt.Question is not null);
        if (refused && _input.IsPiped)
        {
            _printer.Line(_held.Stopped(State, _input.LineNumber + 1, "the input ends"));
        }

        return refused ? Status.No : Status.Done;
    }

    private At? Focus()
    {
        if (_focus is { } chosen && new Outlook(State).ViewOf(chosen) == StepView.Open)
        {
            return chosen;
        }

        _focus = null;
        return Prompter.Next(State);
    }

    private Prompt? CurrentPrompt() => Focus() is { } at ? Prompter.At(State, _job.Shop, at) : null;

    private void ShowPrompt()
    {
        if (State.Standing == JobStanding.Held)
        {
            _printer.Line($"The job is on hold: {State.StandingReason}. take up goes on.");
        }
        else if (CurrentPrompt() is { } prompt)
        {
            _printer.Prompt(State, prompt);
            foreach (string line in Beside?.Invoke(prompt) ?? [])
            {
                _printer.Line(line);
            }
        }
    }

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
