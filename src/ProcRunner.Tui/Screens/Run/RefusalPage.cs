using System.Globalization;
using ProcRunner.Procedures;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>
/// Out of spec: the whole screen says what was read, by how much it is out, whose limit it is, why it matters and what can
/// be done now. Concession and scrap go on to a lead and a PIN, so that no stray reading takes them.
/// </summary>
internal sealed class RefusalPage(RunWork work, Prompt prompt) : RunPage(work)
{
    private readonly bool _isNew = work.TakeAlarm();
    private readonly OutValue? _out = prompt.Before.Count > 0 ? OutValue.Of(prompt.Before[^1]) : null;

    /// <inheritdoc/>
    public override bool RingsBell => _isNew || base.RingsBell;

    /// <inheritdoc/>
    public override void Draw(Canvas canvas, Look look)
    {
        Frame.Head(canvas, look, Work);
        int end = canvas.Put(1, Frame.Top, " OUT OF SPEC ", Ink.Bad);
        canvas.Put(end + 2, Frame.Top, _out?.Name ?? prompt.Step.Name, Ink.Strong);
        string place = prompt.At.Position == At.Head ? "head" : $"at {prompt.Position}";
        canvas.Put(end + 2 + (_out?.Name ?? prompt.Step.Name).Length + 2, Frame.Top, place, Ink.Strong);
        int bottom = canvas.Height - Frame.BottomRows;
        int ways = prompt.WaysOn.Count + 1;
        int row = _out is { } value ? Numbers(canvas, look, value, bottom - ways) : Frame.Top + 2;
        if (Trouble is { } trouble)
        {
            // In place of why it matters: no way on is ever hidden.
            int room = Math.Clamp(bottom - ways - row, 2, 4);
            row = bottom - ways - room < row ? bottom - ways - room : row;
            Frame.Trouble(canvas, row, room, trouble);
            row += room - 1;
        }
        else
        {
            row = Why(canvas, row, bottom - ways);
        }

        Ways(canvas, Math.Min(row + 1, bottom - ways), bottom);

        Frame.Foot(
            canvas,
            look,
            new Foot
            {
                Said = Work.Said,
                Label = "way on",
                Typed = Line.Text,
                Keys = "its number, Enter   * rub out",
                MoreKeys = Work.Lesson is { } lesson ? RunMenu.KeysOf(lesson) : "/ menu: note, history, why",
            }
        );
    }

    /// <inheritdoc/>
    protected override Turn Entered(string typed)
    {
        string text = typed.Trim();
        bool numbered = int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int choice);
        if (text.Length == 0 || !numbered || choice < 1 || choice > prompt.WaysOn.Count)
        {
            return Refuse(
                text.Length == 0 ? "A way on is to be chosen." : $"\"{text}\" is none of the ways on.",
                ["Type the number before a way on; no reading is taken until one is chosen."],
                ""
            );
        }

        return WayPages.Take(Work, prompt.At, prompt.WaysOn[choice - 1], this);
    }

    /// <inheritdoc/>
    protected override Turn Escape() => Turn.Back;

    /// <summary>Goes on after the way was given to the job.</summary>
    public Turn Go(Jobs.JobAnswer answer, string typed) => After(answer, typed);

    private static int Numbers(Canvas canvas, Look look, OutValue value, int end)
    {
        Figure figure = Figure.Of("read", value.Value);
        int side = canvas.Width - 30;
        int row = Frame.Top + 2;
        int rows = 1;
        if (BigDigits.CanDraw(figure.Digits))
        {
            int scale = end - row > 24 && BigDigits.WidthOf(figure.Digits, 2) + 8 < side ? 2 : 1;
            BigDigits.Draw(canvas, 2, row, figure.Digits, look.Glyphs, Ink.Bad, scale);
            rows = BigDigits.Rows * scale;
            int after = 4 + BigDigits.WidthOf(figure.Digits, scale);
            canvas.Put(after, row + rows - 1, figure.Unit, Ink.Strong);
        }
        else
        {
            canvas.Put(2, row, $"{figure.Digits} {figure.Unit}", Ink.Bad);
        }

        int line = row;
        foreach (
            (Quantities.Quantity? limit, string name) in new[]
            {
                (value.Judgement.Low, "low "),
                (value.Judgement.Aim, "aim "),
                (value.Judgement.High, "high"),
            }
        )
        {
            if (limit is { } shown)
            {
                canvas.Put(side, line++, $"{name}  {shown}");
            }
        }

        line = canvas.PutWrapped(side, line, 29, 2, value.Judgement.Origin, Ink.Quiet);
        canvas.Put(side, line, value.Beyond, Ink.Bad);
        return row + Math.Max(rows, 5) + 1;
    }

    private int Why(Canvas canvas, int row, int end)
    {
        // The first fault stands beside the large number already, in figures.
        foreach (string fault in prompt.Faults.Skip(_out is { Beyond.Length: > 0 } ? 1 : 0))
        {
            row = canvas.PutWrapped(1, row, canvas.Width - 2, Math.Clamp(end - row, 0, 3), fault, Ink.Strong);
        }

        if (_out is { Working.Length: > 0 } worked)
        {
            string how = $"worked  {worked.Working}";
            row = canvas.PutWrapped(1, row, canvas.Width - 2, Math.Clamp(end - row, 0, 2), how, Ink.Strong);
        }

        row = canvas.PutWrapped(1, row, canvas.Width - 2, Math.Clamp(end - row, 0, 3), WhyText.Matters(Work, prompt));
        if (prompt.Before.Count > 1)
        {
            string all = string.Join(", ", prompt.Before.TakeLast(6).Select(r => r.Value.ToString()));
            row = canvas.PutWrapped(
                1,
                row,
                canvas.Width - 2,
                Math.Clamp(end - row, 0, 1),
                $"readings here: {all}",
                Ink.Quiet
            );
        }

        if (prompt.Step.Taking?.RetestFirst is { } retest && prompt.WaysOn.All(w => w.Kind == WayKind.Again))
        {
            row = canvas.PutWrapped(
                1,
                row,
                canvas.Width - 2,
                Math.Clamp(end - row, 0, 2),
                $"first: {retest}",
                Ink.Strong
            );
        }

        return row;
    }

    private void Ways(Canvas canvas, int row, int bottom)
    {
        canvas.Put(1, row++, "ways on", Ink.Quiet);
        for (int i = 0; i < prompt.WaysOn.Count && row < bottom; i++)
        {
            WayOn way = prompt.WaysOn[i];
            canvas.Put(1, row, string.Create(CultureInfo.InvariantCulture, $"{i + 1, 2}"), Ink.Strong);
            int end = canvas.Put(5, row, way.Text, Ink.Strong);
            canvas.Put(end + 2, row++, Frame.Cut(WayPages.Note(Work.Plan, way), canvas.Width - end - 3), Ink.Quiet);
        }
    }
}
