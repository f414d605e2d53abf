using ProcRunner.Procedures;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Jobs;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>One step at the machine: what to do, to which number, how far it is, and where on the head.</summary>
internal sealed class StepPage(RunWork work, Prompt prompt) : RunPage(work)
{
    private const int TroubleRows = 4;
    private bool _asks;
    private readonly EntryForm _form = work.FormOf(prompt);
    private readonly bool _isNewQuestion = prompt.Question is not null && work.TakeAlarm();

    /// <inheritdoc/>
    public override bool RingsBell => base.RingsBell || (_form.Question is not null && (_isNewQuestion || _asks));

    /// <inheritdoc/>
    public override void Draw(Canvas canvas, Look look)
    {
        Frame.Head(canvas, look, Work);
        new StepDrawing(canvas, look, Work, prompt, _form).Draw();
        if (Trouble is { } trouble)
        {
            Frame.Trouble(canvas, canvas.Height - Frame.BottomRows - TroubleRows, TroubleRows, trouble);
        }

        string enter = _form.EnterDoes;
        Frame.Foot(
            canvas,
            look,
            new Foot
            {
                Said = Work.Said,
                Label = _form.Label,
                Typed = Line.Text,
                Unit =
                    prompt.Awaits is Awaited.Reading or Awaited.Readout or Awaited.NumberSet && !IsChoice
                        ? prompt.Unit?.Symbol ?? ""
                        : "",
                Keys =
                    Feeds ? "Down feeds, + a little; type it"
                    : enter.Length > 0 ? $"{enter}   * rub out"
                    : $"{Verb}, Enter   * rub out",
                MoreKeys = Work.Lesson is { } lesson ? RunMenu.KeysOf(lesson) : "/ menu: note, correct, go, why",
            }
        );
    }

    /// <inheritdoc/>
    protected override Turn Entered(string typed)
    {
        switch (_form.Take(typed))
        {
            case EntryOutcome.Whole whole when Work.Lesson?.Stop(prompt, whole.Text) is { Length: > 0 } why:
                return Refuse(why, ["Down feeds it by about ten steps, + by one; stop, and type what it shows."], "");
            case EntryOutcome.Whole whole:
                return After(Enter(whole.Text), typed);
            case EntryOutcome.Fault fault:
                return Refuse(fault.Why, fault.WhatToDo, typed);
            case EntryOutcome.Doubt:
                _asks = true;
                return new Turn.Instead(this);
            default:
                return Turn.Stay;
        }
    }

    // A place that was typed twice when it was asked about answers what is asked about it again when all are there.
    private JobAnswer Enter(string text)
    {
        RunCommand.Enter entry = new(prompt.At, text);
        JobAnswer answer = Work.Do(entry);
        bool isAnswered =
            _form.Twice is { } place
            && Work.State.Find(prompt.At)?.Question is { IsOfReading: true } question
            && question.Why.Contains($" at {place};", StringComparison.Ordinal);
        return isAnswered ? Work.Do(entry) : answer;
    }

    /// <inheritdoc/>
    protected override void TakeBack() => _form.TakeBack();

    /// <inheritdoc/>
    protected override bool Moves(KeyPress key)
    {
        bool isFine = key is { Kind: KeyKind.Character, Text: "+" };
        if (!Feeds || !(isFine || key.Kind is KeyKind.Down or KeyKind.PageDown))
        {
            return false;
        }

        Work.Lesson!.Feed(prompt, isCoarse: !isFine);
        return true;
    }

    // Leaving loses nothing that is recorded; what is only half typed is finished or rubbed out first.
    /// <inheritdoc/>
    protected override Turn Escape() =>
        Work.Lesson?.IsInTheMetal(prompt) == true ? Refuse(RunMenu.InTheMetal, [], Line.Text)
        : Line.IsEmpty && !_form.IsBegun ? Turn.Back
        : Refuse("What is typed isn't recorded yet.", ["Finish it, or rub it out with *."], Line.Text);

    private bool Feeds => Work.Lesson?.ReadoutOf(prompt) is not null && _form.Question is null;

    private bool IsChoice => _form.Question is { Meanings.Count: > 0 };

    private string Verb =>
        IsChoice || prompt.Awaits is Awaited.Finding or Awaited.Choice ? "its number"
        : prompt.Awaits == Awaited.Part && _form.IsBegun ? "lot, or - for none"
        : prompt.Step.Work is StepWork.Fit ? "type or scan"
        : "type it";
}
