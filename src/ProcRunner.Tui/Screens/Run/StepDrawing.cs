using System.Globalization;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>Lays a step out: the number or the choices at the left, the picture at the right, the head's plan beneath.</summary>
internal sealed class StepDrawing
{
    private const int NumberRow = Frame.Top + 2;
    private const int LabelWidth = 9;
    private readonly Canvas _canvas;
    private readonly Look _look;
    private readonly RunWork _work;
    private readonly Prompt _prompt;
    private readonly EntryForm _form;
    private readonly int _panel;
    private readonly int _left;

    /// <summary>A drawing of a prompt.</summary>
    public StepDrawing(Canvas canvas, Look look, RunWork work, Prompt prompt, EntryForm form)
    {
        (_canvas, _look, _work, _prompt, _form) = (canvas, look, work, prompt, form);
        int panelWidth = canvas.Width >= 110 ? 40 : 28;
        _panel = canvas.Width - panelWidth;
        _left = _panel - 3;
    }

    /// <summary>Draws all between head and foot.</summary>
    public void Draw()
    {
        HeadPlan plan = HeadPlan.Of(_work, _prompt);
        Figure? figure = _form.Question is null ? Figure.Of(_work.State, _prompt) : null;
        if (figure is not null && !BigDigits.CanDraw(figure.Digits))
        {
            figure = null;
        }

        int bottom = _canvas.Height - Frame.BottomRows;
        if (figure is not null)
        {
            bottom -= Cautions(bottom);
        }

        int planRow = bottom - plan.Rows;
        plan.Draw(_canvas, planRow);
        _canvas.Put(1, Frame.Top, $" {Heading.Of(_prompt)} ", Ink.Act);
        if (figure is not null)
        {
            DrawNumber(figure, planRow);
        }
        else
        {
            DrawWords(planRow);
        }

        DrawPanel(planRow);
    }

    // The signal word stands first, so that it is seen even where the rest is long.
    private int Cautions(int bottom)
    {
        IReadOnlyList<Caution> cautions = CautionWords.At(_work.Plan, _prompt.Step);
        if (cautions.Count == 0)
        {
            return 0;
        }

        int[] rows = [.. cautions.Select(c => 1 + ((c.Word.Length + c.Text.Length) / (_canvas.Width - 4)))];
        int row = bottom - rows.Sum();
        foreach (Caution caution in cautions)
        {
            row = CautionWords.Draw(_canvas, 1, row, _canvas.Width - 2, bottom - row, caution);
        }

        return rows.Sum();
    }

    private void DrawNumber(Figure figure, int planRow)
    {
        int lines = 6;
        int room = planRow - NumberRow - lines - 1;
        int scale = 1;
        while (
            BigDigits.WidthOf(figure.Digits, scale + 1) + figure.Unit.Length + 3 <= _left
            && BigDigits.Rows * (scale + 1) <= room
        )
        {
            scale++;
        }

        _canvas.Put(2, NumberRow - 1, figure.Label, Ink.Quiet);
        BigDigits.Draw(_canvas, 2, NumberRow, figure.Digits, _look.Glyphs, Ink.Strong, scale);
        int rows = BigDigits.Rows * scale;
        int after = 2 + BigDigits.WidthOf(figure.Digits, scale) + 2;
        _canvas.Put(after, NumberRow + rows - 1, figure.Unit, Ink.Strong);
        int row = Places(NumberRow + rows + 1);
        Info(row, planRow);
    }

    // Values given so far, then the places still to come: what is typed is seen where it went.
    private int Places(int row)
    {
        if (_prompt.Awaits != Awaited.Reading || _prompt.Places.Count < 2)
        {
            return row;
        }

        IReadOnlyList<Quantity> values = _form.Values;
        int column = 1;
        for (int i = 0; i < _prompt.Places.Count; i++)
        {
            string value = i < values.Count ? values[i].Value.ToString(CultureInfo.InvariantCulture) : "...";
            string text = $"{_prompt.Places[i]} {value}";
            if (column + text.Length > _left)
            {
                (column, row) = (1, row + 1);
            }

            Ink ink =
                i < values.Count ? Ink.Strong
                : i == values.Count ? Ink.Act
                : Ink.Quiet;
            column = _canvas.Put(column, row, text, ink) + 2;
        }

        return row + 1;
    }

    private void Info(int row, int end)
    {
        foreach ((string label, string text, Ink ink) in InfoLines.Of(_work, _prompt))
        {
            if (row >= end)
            {
                return;
            }

            _canvas.Put(1, row, label, Ink.Quiet);
            row = _canvas.PutWrapped(LabelWidth + 1, row, _left - LabelWidth, Math.Min(2, end - row), text, ink);
        }
    }

    private void DrawWords(int planRow)
    {
        int row = Frame.Top + 2;
        if (_form.Question is { } question)
        {
            row = _canvas.PutWrapped(1, row, _left, 3, $"\"{question.Typed}\": {question.Why}", Ink.Mind);
            row = Choices(row + 1, planRow, question.Meanings);
            _canvas.PutWrapped(1, row + 1, _left, planRow - row - 1, "Or type the reading again, with its point.");
            return;
        }

        row = _canvas.PutWrapped(1, row, _left, planRow - row, _prompt.Step.Say);
        if (_prompt.Choices.Count > 0)
        {
            row = Choices(row + 1, planRow, _prompt.Choices);
        }

        row = Places(row + 1);
        if (_prompt.Awaits == Awaited.Part && _form.IsBegun)
        {
            _canvas.Put(1, row, "number taken; now its lot", Ink.Strong);
            row += 2;
        }

        foreach (Caution caution in _prompt.Step.Cautions)
        {
            row = CautionWords.Draw(_canvas, 1, row, _left, Math.Max(0, planRow - row), caution);
        }

        Info(row + 1, planRow);
    }

    private int Choices(int row, int end, IReadOnlyList<string> choices)
    {
        for (int i = 0; i < choices.Count && row < end; i++)
        {
            _canvas.Put(1, row, string.Create(CultureInfo.InvariantCulture, $"{i + 1, 2}"), Ink.Strong);
            row = _canvas.PutWrapped(5, row, _left - 4, end - row, choices[i], Ink.Strong);
        }

        return row;
    }

    private void DrawPanel(int planRow)
    {
        int top = Frame.Top + 2;
        int width = _canvas.Width - _panel - 1;
        if (_prompt.Awaits == Awaited.Readout && CutLevel.Of(_work, _prompt) is { Count: > 2 } levels)
        {
            string where = _prompt.At.Position == Runs.At.Head ? "the deck" : $"the seat at {_prompt.Position}";
            _canvas.Put(_panel, Frame.Top, $"section of {where}", Ink.Quiet);
            CutSection.Draw(_canvas, _look, _panel, top - 1, width, planRow - top, levels);
        }
        else if (_prompt.Awaits == Awaited.Reading)
        {
            _canvas.Put(_panel, Frame.Top, Frame.Cut(_prompt.Step.Taking!.Characteristic, width), Ink.Quiet);
            ReadingScale.Draw(_canvas, _look, _panel, top - 1, width, planRow - top, _prompt);
        }
        else if (_prompt.Awaits is Awaited.Done or Awaited.NumberSet && _prompt.Step.Why.Length > 0)
        {
            _canvas.Put(_panel, Frame.Top, "why", Ink.Quiet);
            _canvas.PutWrapped(_panel, top - 1, width, planRow - top, _prompt.Step.Why, Ink.Quiet);
        }
    }
}
