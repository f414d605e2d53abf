using ProcRunner.Text;
using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Screens.Parts;

/// <summary>
/// A screen with a title and a person above, one entry line and its keys below, and a line for what there is to say. Each
/// stands in the same place on every screen.
/// </summary>
/// <param name="words">What the frame says besides.</param>
internal abstract class FramedScreen(IFrameWords words) : Screen
{
    private const int Above = 2;
    private const int Below = 4;
    private string _word = "";
    private Ink _ink;

    /// <summary>What the screen is about.</summary>
    protected abstract string Title { get; }

    /// <summary>What the entry line asks for.</summary>
    protected abstract string Asks { get; }

    /// <summary>Every key that works here, and none that doesn't.</summary>
    protected abstract IReadOnlyList<string> Keys { get; }

    /// <summary>The entry line.</summary>
    protected EntryLine Line { get; } = new();

    /// <summary>What the frame says besides.</summary>
    protected IFrameWords Words { get; } = words;

    /// <summary>The entry as it is shown.</summary>
    protected virtual string Typed => Line.Text;

    /// <inheritdoc/>
    public override bool IsPractice => Words.IsPractice;

    /// <inheritdoc/>
    public override void Draw(Canvas canvas, Look look)
    {
        int width = canvas.Width;
        int half = (width / 2) - 7;
        canvas.Put(1, 0, Fitting.Line(Title, half), Ink.Strong);
        canvas.PutRight(width - 1, 0, Fitting.Line(Words.Corner, half), Ink.Quiet);
        canvas.Fill(0, 1, width, 1, look.Glyphs.Line, Ink.Quiet);
        DrawBody(canvas, look, new Area(1, Above, width - 2, canvas.Height - Above - Below));

        int foot = canvas.Height - Below;
        canvas.Fill(0, foot, width, 1, look.Glyphs.Line, Ink.Quiet);
        canvas.Put(1, foot + 1, Fitting.Line(_word, width - 2), _ink);
        int column = canvas.Put(1, foot + 2, Fitting.Line(Asks, half) + "   ", Ink.Act);
        column = canvas.Put(column + 1, foot + 2, Fitting.End(Typed, width - column - 3), Ink.Strong);
        canvas.Cursor = (column, foot + 2);
        canvas.Put(column, foot + 2, '_', Ink.Strong);
        DrawKeys(canvas, foot + 3);
    }

    /// <inheritdoc/>
    public override Turn Press(KeyPress key)
    {
        switch (key.Kind)
        {
            case KeyKind.Escape:
                return Escaped();
            case KeyKind.PageDown or KeyKind.Down:
                Page(1);
                return Turn.Stay;
            case KeyKind.PageUp or KeyKind.Up:
                Page(-1);
                return Turn.Stay;
            case KeyKind.Enter:
                Say("", Ink.Plain);
                return Entered(SafeText.Clean(Line.Take()).Trim());
            case KeyKind.Character when Line.IsEmpty && First(key.Text) is { } turn:
                return turn;
            case KeyKind.Character when key.Text == "*":
                Line.Press(new KeyPress(KeyKind.Backspace, ""));
                return Turn.Stay;
            default:
                Line.Press(key);
                return Turn.Stay;
        }
    }

    /// <inheritdoc/>
    public override void Return() => Say(Words.TakeWord(), Ink.Strong);

    /// <summary>Draws what stands between the frame's lines.</summary>
    protected abstract void DrawBody(Canvas canvas, Look look, Area area);

    /// <summary>Takes what was entered, cleaned.</summary>
    protected abstract Turn Entered(string text);

    /// <summary>A character in an empty entry line that does something by itself; null when it is to be typed.</summary>
    protected virtual Turn? First(string character)
    {
        switch (character)
        {
            case "+":
                Page(1);
                return Turn.Stay;
            case "-":
                Page(-1);
                return Turn.Stay;
            case "*" or "?":
                return new Turn.To(Words.Help());
            default:
                return null;
        }
    }

    /// <summary>Turns pages.</summary>
    protected virtual void Page(int by) { }

    /// <summary>Escape.</summary>
    protected virtual Turn Escaped() => Turn.Back;

    /// <summary>Says something above the entry line, until the next entry.</summary>
    protected void Say(string word, Ink ink) => (_word, _ink) = (word, ink);

    /// <summary>Says what keeps something from being done, and stays.</summary>
    protected Turn Refuse(string why)
    {
        Say(why, Ink.Bad);
        return Turn.Stay;
    }

    // The practice mark stands in the middle of this row: no key is put under it.
    private void DrawKeys(Canvas canvas, int row)
    {
        int column = 1;
        int middle = canvas.Width / 2;
        foreach (string key in Keys.Where(key => key.Length > 0))
        {
            bool underMark = IsPractice && column < middle + 7 && column + key.Length > middle - 7;
            column = underMark ? middle + 7 : column;
            if (column + key.Length > canvas.Width)
            {
                return;
            }

            column = canvas.Put(column, row, key, Ink.Quiet) + 3;
        }
    }
}
