using System.Globalization;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>
/// Lays a step out: the number or the choices at the left with what belongs to it, a picture or the position at the right,
/// the head's plan and the cautions beneath. Everything keeps its place from step to step.
/// </summary>
internal sealed class StepDrawing
{
    private const int NumberRow = Frame.Top + 2;
    private const int LabelWidth = 9;
    private const int RoomyRows = 34;
    private readonly Canvas _canvas;
    private readonly Look _look;
    private readonly RunWork _work;
    private readonly Prompt _prompt;
    private readonly EntryForm _form;
    private readonly int _panel;
    private readonly int _left;
    private readonly bool _roomy;

    /// <summary>A drawing of a prompt.</summary>
    public StepDrawing(Canvas canvas, Look look, RunWork work, Prompt prompt, EntryForm form)
    {
        (_canvas, _look, _work, _prompt, _form) = (canvas, look, work, prompt, form);
        _panel = canvas.Width - (canvas.Width >= 110 ? 40 : 28);
        _left = _panel - 3;
        _roomy = canvas.Height >= RoomyRows;
    }

    /// <summary>Draws all between head and foot.</summary>
    public void Draw()
    {
        Figure? figure = _form.Question is null ? Figure.Of(_work.State, _prompt) : null;
        figure = figure is { } number && BigDigits.CanDraw(number.Digits) ? number : null;
        bool wordsHoldCautions = figure is null && _prompt.Awaits != Awaited.Reading;
        int bottom = _canvas.Height - Frame.BottomRows;
        bottom -= wordsHoldCautions ? 0 : Cautions(bottom);
        HeadPlan plan = HeadPlan.Of(_work, _prompt);
        int end = bottom - plan.RowsAt(_roomy) - (_roomy ? 1 : 0);
        plan.Draw(_canvas, end + (_roomy ? 1 : 0), _roomy);
        _canvas.Put(1, Frame.Top, $" {Heading.Of(_prompt)} ", Ink.Act);
        int row = figure is null ? DrawWords(end - 1, wordsHoldCautions) : DrawNumber(figure, end - 1);
        DrawEarlier(row + 1, end - 1);
        _canvas.Put(1, end - 1, "next", Ink.Quiet);
        _canvas.Put(LabelWidth + 1, end - 1, Frame.Cut(NextStep.Of(_work, _prompt.At), _left - LabelWidth));
        DrawPanel(end, figure is not null);
    }

    private int Cautions(int bottom)
    {
        IReadOnlyList<Caution> cautions = CautionWords.At(_work.Plan, _prompt.Step);
        int width = _canvas.Width - 2;
        int rows = cautions.Sum(c => Canvas.Wrap(CautionWords.Text(c), width).Count);
        int row = bottom - rows;
        foreach (Caution caution in cautions)
        {
            row = CautionWords.Draw(_canvas, 1, row, width, bottom - row, caution);
        }

        return rows;
    }

    private int DrawNumber(Figure figure, int end)
    {
        const int Lines = 7;
        int scale = 1;
        while (
            BigDigits.WidthOf(figure.Digits, scale + 1) + figure.Unit.Length + 4 <= _left
            && BigDigits.Rows * (scale + 1) <= end - NumberRow - Lines
        )
        {
            scale++;
        }

        int label = _canvas.Put(2, NumberRow - 1, figure.Label, Ink.Quiet);
        _canvas.Put(label + 3, NumberRow - 1, InfoLines.Left(_prompt, _work.Job.Shop.Readout), Ink.Strong);
        BigDigits.Draw(_canvas, 2, NumberRow, figure.Digits, _look.Glyphs, Ink.Strong, scale);
        int rows = BigDigits.Rows * scale;
        int after = BigDigits.WidthOf(figure.Digits, scale) + 4;
        _canvas.Put(after, NumberRow + rows - 1, figure.Unit, Ink.Strong);
        return Info(Places(NumberRow + rows + (_roomy ? 1 : 0)), end);
    }

    // Values given so far, then the places still to come: what is typed is seen where it went.
    private int Places(int row)
    {
        if (_prompt.Awaits != Awaited.Reading || _prompt.Places.Count < 2)
        {
            return row;
        }

        IReadOnlyList<Quantity> values = _form.Values;
        IReadOnlyList<string> shown = PlacesText.Of(values, _prompt.Unit!);
        int column = 1;
        for (int i = 0; i < _prompt.Places.Count; i++)
        {
            string value = i < values.Count ? shown[i] : "...";
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

        return row + (_roomy ? 2 : 1);
    }

    private int Info(int row, int end)
    {
        foreach ((string label, string text, Ink ink) in InfoLines.Of(_work, _prompt))
        {
            if (row >= end)
            {
                break;
            }

            _canvas.Put(1, row, label, Ink.Quiet);
            row = _canvas.PutWrapped(
                LabelWidth + 1,
                row,
                _left - LabelWidth,
                Math.Min(label == "how" ? 6 : 3, end - row),
                text,
                ink
            );
        }

        return row;
    }

    private int DrawWords(int end, bool withCautions)
    {
        int row = NumberRow;
        if (_form.Question is { Meanings.Count: 0 } doubt)
        {
            row = _canvas.PutWrapped(1, row, _left, end - row, doubt.Why, Ink.Mind);
            return Places(row + 1);
        }

        if (_form.Question is { } question)
        {
            row = _canvas.PutWrapped(1, row, _left, 4, $"\"{question.Typed}\": {question.Why}", Ink.Mind);
            row = Choices(row + 1, end, question.Meanings);
            return _canvas.PutWrapped(
                1,
                row + 1,
                _left,
                Math.Max(0, end - row - 1),
                "Or type it again, with its point."
            );
        }

        row = _canvas.PutWrapped(1, row, _left, end - row, _prompt.Step.Say);
        row = _prompt.Choices.Count > 0 ? Choices(row + 1, end, _prompt.Choices) : row;
        row = Places(row + 1);
        if (_prompt.Awaits == Awaited.Part && _form.IsBegun)
        {
            _canvas.Put(1, row, "number taken; now its lot", Ink.Strong);
            row += 2;
        }

        foreach (Caution caution in withCautions ? _prompt.Step.Cautions : [])
        {
            row = CautionWords.Draw(_canvas, 1, row, _left, Math.Max(0, end - row), caution);
        }

        return Info(row + 1, end);
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

    // Where there is room, what was entered at this position before.
    private void DrawEarlier(int row, int end)
    {
        if (!_roomy || end - row < 4)
        {
            return;
        }

        IReadOnlyList<string> lines = HistoryText.Of(_work, _prompt.At.Position);
        int most = end - 1 - row - 1;
        _canvas.Put(1, row, "here before, the latest first", Ink.Quiet);
        for (int i = 0; i < lines.Count && i < most; i++)
        {
            _canvas.Put(3, row + 1 + i, Frame.Cut(lines[i], _left - 3), Ink.Quiet);
        }
    }

    private void DrawPanel(int end, bool besideNumber)
    {
        int width = _canvas.Width - _panel - 1;
        int top = Frame.Top + 1;
        int height = Math.Min(end - top, 22);
        if (_work.Lesson?.ReadoutOf(_prompt) is { } stands)
        {
            top = DrawReadout(top, width, stands);
            DrawSection(top, width, end - top, stands);
        }
        else if (_work.Lesson is { } lesson && GaugeView.Of(lesson, _prompt, _form.Values.Count) is { Count: > 0 } face)
        {
            foreach (string line in face.Take(end - top))
            {
                _canvas.Put(_panel, top++, Frame.Cut(line, width), Ink.Strong);
            }
        }
        else if (_prompt.Awaits == Awaited.Readout && CutLevel.Of(_work, _prompt) is { Count: > 2 })
        {
            DrawSection(top, width, height, shows: null);
        }
        else if (_prompt.Awaits == Awaited.Reading && (ReadingScale.HasScale(_prompt) || _prompt.Before.Count > 0))
        {
            _canvas.Put(_panel, Frame.Top, Frame.Cut(_prompt.Step.Taking!.Characteristic, width), Ink.Quiet);
            int row = ReadingScale.Draw(_canvas, _look, _panel, top, width, height, _prompt, _form.Values);
            string say = besideNumber ? _prompt.Step.Say : "";
            _canvas.PutWrapped(_panel, row + 1, width, Math.Max(0, end - row - 1), say);
        }
        else
        {
            DrawPosition(top, width, end);
        }
    }

    private void DrawSection(int top, int width, int height, Quantity? shows)
    {
        if (CutLevel.Of(_work, _prompt, shows) is { Count: > 2 } levels)
        {
            string where = _prompt.At.Position == At.Head ? "the deck" : $"the metal at {_prompt.Position}";
            _canvas.Put(_panel, Frame.Top, $"section of {where}", Ink.Quiet);
            CutSection.Draw(_canvas, _look, _panel, top, width, Math.Min(height, 22), levels);
        }
    }

    // The machine's display, which moves as the learner feeds.
    private int DrawReadout(int top, int width, Quantity stands)
    {
        string digits = stands.Value.ToString(CultureInfo.InvariantCulture);
        if (_roomy && BigDigits.CanDraw(digits) && BigDigits.WidthOf(digits, 1) <= width)
        {
            BigDigits.Draw(_canvas, _panel, top + 1, digits, _look.Glyphs, Ink.Strong, 1);
            _canvas.Put(_panel, top + 1 + BigDigits.Rows, $"the readout, {stands.Unit}", Ink.Quiet);
            return top + BigDigits.Rows + 3;
        }

        string edge = new('-', digits.Length + 2);
        _canvas.Put(_panel, top, $".{edge}.", Ink.Strong);
        _canvas.Put(_panel, top + 1, $"| {digits} | readout", Ink.Strong);
        _canvas.Put(_panel, top + 2, $"'{edge}'", Ink.Strong);
        return top + 3;
    }

    private void DrawPosition(int top, int width, int end)
    {
        int row = top + 1;
        if (_prompt.At.Position != At.Head && BigDigits.CanDraw(_prompt.Position))
        {
            BigDigits.Draw(_canvas, _panel, row, _prompt.Position, _look.Glyphs, Ink.Strong, _roomy ? 2 : 1);
            row += (BigDigits.Rows * (_roomy ? 2 : 1)) + 1;
        }

        _canvas.PutWrapped(_panel, row, width, Math.Max(0, end - row), _prompt.Step.Why, Ink.Quiet);
    }
}
