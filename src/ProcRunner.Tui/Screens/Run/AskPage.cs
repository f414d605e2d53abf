using System.Globalization;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Jobs;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>
/// A question of its own: what it is about, numbered answers, and a line to type in where typing is allowed. The menu, stock
/// answers, persons and PINs are all asked this way.
/// </summary>
internal sealed class AskPage(RunWork work, string title) : RunPage(work)
{
    private const int ShortAbout = 6;
    private const string ByNumber = "Type the number that stands before an answer.";
    private int _top;
    private int _fits = int.MaxValue;

    /// <summary>What there is to know first.</summary>
    public IReadOnlyList<string> About { get; init; } = [];

    /// <summary>The answers, numbered from 1.</summary>
    public IReadOnlyList<Option> Options { get; init; } = [];

    /// <summary>What the line waits for.</summary>
    public string Label { get; init; } = "number";

    /// <summary>The unit of a number typed bare.</summary>
    public string Unit { get; init; } = "";

    /// <summary>What is done with typed text that is no number of an answer; null where only answers are allowed.</summary>
    public Func<AskPage, string, Turn>? Typed { get; init; }

    /// <summary>What Enter alone does, in words, and does; null: nothing.</summary>
    public (string Words, Func<AskPage, Turn> Do)? OnEnter { get; init; }

    /// <summary>True for a PIN: shown as asterisks, never put back into the line.</summary>
    public bool Secret { get; init; }

    /// <summary>True for a page behind which a PIN waits that was typed before.</summary>
    public bool HoldsPin { get; init; }

    /// <summary>True for a page that isn't left by going back: the job is held, nothing is open.</summary>
    public bool Stays { get; init; }

    /// <summary>True for a step of the run: a slash opens the menu here too.</summary>
    public bool Menu { get; init; }

    /// <summary>True for a page that tells of something refused: the bell rings.</summary>
    public bool Alarm { get; init; }

    /// <inheritdoc/>
    public override bool RingsBell => Alarm || base.RingsBell;

    /// <summary>Goes on after a command.</summary>
    public Turn Go(JobAnswer answer, string typed) => After(answer, Secret ? "" : typed);

    /// <summary>Says why an answer isn't taken.</summary>
    public Turn No(string why, string typed) => Refuse(why, [], Secret ? "" : typed);

    /// <summary>Back to the run.</summary>
    public Turn Done() => ToRun();

    // What fits stays as it is, so that tables stand; a long one leaves the options their room.
    private int DrawAbout(Canvas canvas, int row, int bottom)
    {
        int width = canvas.Width - 4;
        string[] lines = [.. About.SelectMany(l => l.Length <= width ? [l] : Canvas.Wrap(l, width))];
        int room = Math.Max(bottom - row - Options.Count - 1, ShortAbout);
        int shown = lines.Length <= room ? lines.Length : room - 1;
        foreach (string line in lines.Take(shown))
        {
            canvas.Put(2, row++, line);
        }

        if (shown < lines.Length)
        {
            string more = string.Create(CultureInfo.InvariantCulture, $"and {lines.Length - shown} lines more");
            canvas.Put(2, row++, more, Ink.Quiet);
        }

        return row;
    }

    /// <inheritdoc/>
    public override void Draw(Canvas canvas, Look look)
    {
        Frame.Head(canvas, look, Work);
        canvas.Put(1, Frame.Top, $" {title} ", Ink.Act);
        int bottom = canvas.Height - Frame.BottomRows - (Trouble is null ? 0 : 3);
        int row = Frame.Top + 2;
        row = DrawAbout(canvas, row, bottom);

        DrawOptions(canvas, row + (About.Count > 0 ? 1 : 0), bottom);
        if (Trouble is { } trouble)
        {
            Frame.Trouble(canvas, bottom, 3, trouble);
        }

        Frame.Foot(
            canvas,
            look,
            new Foot
            {
                Said = Work.Said,
                Label = Label,
                Unit = Unit,
                Typed = Line.Text,
                Secret = Secret,
                Keys = string.Join("   ", KeysOf()),
                MoreKeys =
                    Menu ? "/ menu"
                    : Stays ? ""
                    : "/ back",
            }
        );
    }

    /// <inheritdoc/>
    public override Screen? ForgetPins()
    {
        if (Secret)
        {
            Line.Take();
        }

        return HoldsPin ? RunScreen.Now(Work) : null;
    }

    /// <inheritdoc/>
    protected override Turn Entered(string typed)
    {
        string text = typed.Trim();
        if (text.Length == 0)
        {
            return OnEnter is { } enter
                ? enter.Do(this)
                : Refuse("Nothing was typed.", [Options.Count > 0 ? ByNumber : "Type it, then Enter."], "");
        }

        bool numbered = !Secret && int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out _);
        int choice = numbered && text.Length < 4 ? int.Parse(text, CultureInfo.InvariantCulture) : 0;
        if (choice >= 1 && choice <= Options.Count)
        {
            return Options[choice - 1].Take(this);
        }

        if (numbered && choice == 0 && text.All(c => c == '0') && Options.Count > 0)
        {
            return Slash();
        }

        // What was typed isn't said again: it may be a PIN, a page too early.
        return Typed is { } take && (Options.Count == 0 || !numbered)
            ? take(this, text)
            : Refuse("That is the number of no answer here.", [ByNumber], "");
    }

    /// <inheritdoc/>
    protected override Turn Slash() =>
        Menu ? base.Slash()
        : Stays ? Turn.Stay
        : ToRun();

    /// <inheritdoc/>
    protected override Turn Escape() => Menu || Stays ? Turn.Back : ToRun();

    /// <inheritdoc/>
    protected override bool Scrolls => Options.Count > _fits;

    /// <inheritdoc/>
    protected override Turn Scroll(int by)
    {
        int next = _top + (by * Math.Min(_fits, Options.Count));
        _top = next < 0 || next >= Options.Count ? 0 : next;
        return Turn.Stay;
    }

    // With many answers they stand in two columns; what doesn't fit is reached by plus or a page key, or by its number.
    private void DrawOptions(Canvas canvas, int row, int bottom)
    {
        int rows = Math.Max(1, bottom - row);
        bool two =
            Options.Count > rows
            && Options.All(o => o.Note.Length == 0 && o.Text.Length <= ((canvas.Width - 4) / 2) - 5);
        int width = two ? (canvas.Width - 4) / 2 : canvas.Width - 4;
        _fits = rows * (two ? 2 : 1);
        int top = Options.Count <= _fits ? 0 : _top;
        for (int i = top; i < Options.Count; i++)
        {
            int at = i - top;
            int column = two && at >= rows ? 2 + width : 2;
            if (at >= _fits)
            {
                break;
            }

            Option option = Options[i];
            string number = string.Create(CultureInfo.InvariantCulture, $"{i + 1, 2}");
            int y = row + (two ? at % rows : at);
            canvas.Put(column, y, number, Ink.Strong);
            int end = canvas.Put(column + 4, y, Frame.Cut(option.Text, width - 4));
            canvas.Put(end + 2, y, Frame.Cut(option.Note, column + width - end - 2), Ink.Quiet);
        }
    }

    private IEnumerable<string> KeysOf()
    {
        if (OnEnter is { } enter)
        {
            yield return $"Enter: {enter.Words}";
        }
        else
        {
            yield return Options.Count > 0 ? "its number, Enter" : "type, Enter";
        }

        yield return "* rub out";
        if (Scrolls)
        {
            yield return "+ more";
        }
    }
}
