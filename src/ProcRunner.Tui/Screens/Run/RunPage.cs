using ProcRunner.Tui.Jobs;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>
/// A page of a run: one entry line, the keys of the number pad, and what to say when something was refused. A refusal
/// never loses what was typed.
/// </summary>
internal abstract class RunPage(RunWork work) : Screen
{
    private bool _stands;

    /// <inheritdoc/>
    public override bool IsPractice => Work.State.Job is { Practice: true };

    /// <inheritdoc/>
    public override bool RingsBell => Trouble is not null;

    /// <summary>What the pages of this run share.</summary>
    protected RunWork Work { get; } = work;

    /// <summary>What is typed.</summary>
    protected EntryLine Line { get; } = new();

    /// <summary>Why the last entry wasn't taken; null when it was.</summary>
    protected Trouble? Trouble { get; private set; }

    /// <inheritdoc/>
    public sealed override Turn Press(KeyPress key)
    {
        // What was refused stands in the line to be mended or entered again; the next character begins anew, so that a
        // gauge's next reading isn't hung onto it.
        bool stands = _stands;
        _stands = false;
        bool free = Line.IsEmpty || stands;
        if (free && Moves(key))
        {
            Trouble = null;
            Line.Take();
            return Turn.Stay;
        }

        switch (key.Kind)
        {
            case KeyKind.Enter:
                Trouble = null;
                return Entered(Line.Take());
            case KeyKind.Character when key.Text == "/" && free:
                return Slash();
            case KeyKind.Character when key.Text == "*":
            case KeyKind.Backspace:
                return RubOut();
            case KeyKind.Character when key.Text == "+" && free && Scrolls:
                return Scroll(1);
            case KeyKind.Escape:
                return Escape();
            case KeyKind.PageUp or KeyKind.Up:
                return Scroll(-1);
            case KeyKind.PageDown or KeyKind.Down:
                return Scroll(1);
            default:
                if (stands)
                {
                    Line.Take();
                }

                Line.Press(key);
                return Turn.Stay;
        }
    }

    /// <summary>Enter, with what was typed.</summary>
    protected abstract Turn Entered(string typed);

    /// <summary>A key that moves something on the page while nothing is typed; false: it means what it always does.</summary>
    protected virtual bool Moves(KeyPress key) => false;

    /// <summary>A slash in an empty field: the menu, or back from it.</summary>
    protected virtual Turn Slash() => new Turn.Instead(RunMenu.Menu(Work));

    /// <summary>Escape.</summary>
    protected virtual Turn Escape() => ToRun();

    /// <summary>Rubbing out in an empty field.</summary>
    protected virtual void TakeBack() { }

    /// <summary>True when there is more than fits, so that a plus in an empty field goes on.</summary>
    protected virtual bool Scrolls => false;

    /// <summary>A page up or down.</summary>
    protected virtual Turn Scroll(int by) => Turn.Stay;

    /// <summary>The page for where the run stands.</summary>
    protected Turn ToRun() => new Turn.Instead(RunScreen.Now(Work));

    /// <summary>Goes on after a command; a refusal is shown here, and what was typed stands in the line again.</summary>
    protected Turn After(JobAnswer answer, string typed) =>
        answer switch
        {
            JobAnswer.Refused refused => Refuse(refused.Why, [.. refused.WhatToDo.Where(IsForScreen)], typed),
            JobAnswer.NotWritten failed => Refuse(
                $"NOT WRITTEN: {failed.Why}",
                ["Nothing was recorded. Mend the cause, then press Enter again."],
                typed
            ),
            _ => ToRun(),
        };

    /// <summary>Shows why something wasn't taken, with what was typed back in the line.</summary>
    protected Turn Refuse(string why, IReadOnlyList<string> whatToDo, string typed)
    {
        Trouble = new Trouble(why, whatToDo);
        Line.Restore(typed);
        _stands = true;
        return new Turn.Instead(this);
    }

    private Turn RubOut()
    {
        if (Line.IsEmpty)
        {
            TakeBack();
        }
        else
        {
            Line.Press(new KeyPress(KeyKind.Backspace, ""));
        }

        return Turn.Stay;
    }

    // Forms of line mode are no help at a screen.
    private static bool IsForScreen(string line) => !line.Contains('…', StringComparison.Ordinal);
}
