using System.Globalization;
using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Screens.Parts;

/// <summary>
/// A form: one line after the other, each taken with Enter; / goes a line back, and out from the first one. The last Enter
/// writes it.
/// </summary>
/// <param name="words">What the frame says besides.</param>
internal abstract class FormScreen(IFrameWords words) : FramedScreen(words)
{
    private const int LabelWidth = 22;
    private int _reached;
    private int _choicePage;
    private int _choicesShown = 1;

    /// <summary>The lines, in order.</summary>
    protected abstract IReadOnlyList<Field> Fields { get; }

    /// <summary>What stands above the lines; empty for nothing.</summary>
    protected virtual string Intro => "";

    /// <inheritdoc/>
    protected override string Asks => Now.Label;

    /// <inheritdoc/>
    protected override string Typed => Now.Kind == FieldKind.Pin ? new string('*', Line.Text.Length) : Line.Text;

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Keys =>
        [
            Now.Choices().Count > 0 ? "number Enter chooses" : "",
            Standing.Length > 0 ? "Enter keeps what is proposed"
            : Now.MayBeEmpty ? "Enter leaves it empty"
            : "Enter takes it",
            Now.Choices().Count > _choicesShown ? "+ - pages" : "",
            At == FirstAsked ? "/ back, nothing written" : "/ one line back",
        ];

    private int FirstAsked => Fields.TakeWhile(f => !f.IsAsked()).Count();

    // The first line isn't always asked for.
    /// <summary>Which line what keeps the form from being written is about; null or -1 for none in particular.</summary>
    protected int? AtFault { get; set; }

    private int At => Math.Max(_reached, FirstAsked);

    private Field Now => Fields[At];

    // What Enter alone would take.
    private string Standing => Now.Kind == FieldKind.Pin ? "" : Now.Value ?? Now.Proposed();

    /// <summary>A page that says why a value isn't taken; null when it is.</summary>
    protected virtual Screen? Objection(Field field, string value) => null;

    /// <summary>Writes what was entered; what keeps it from being written, or null.</summary>
    protected abstract string? Write();

    /// <summary>Where to go once it is written.</summary>
    protected virtual Turn Done() => Turn.Back;

    /// <inheritdoc/>
    protected override void DrawBody(Canvas canvas, Look look, Area area)
    {
        int row = area.Row;
        if (Intro.Length > 0)
        {
            row = canvas.PutWrapped(area.Column, row, area.Width, 4, Intro) + 1;
        }

        foreach (Field field in Fields.Where(f => f.IsAsked()))
        {
            DrawField(canvas, row++, area, field);
        }

        row++;
        if (Now.Hint() is { Length: > 0 } hint)
        {
            row = canvas.PutWrapped(area.Column, row, area.Width, 3, hint) + 1;
        }

        DrawChoices(canvas, new Area(area.Column, row, area.Width, area.Row + area.Height - row));
    }

    /// <inheritdoc/>
    protected override Turn Entered(string text)
    {
        Field field = Now;
        IReadOnlyList<string> choices = field.Choices();
        bool isNumber = int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number);
        string value =
            text.Length == 0 ? Standing
            : field.Kind != FieldKind.Pin && isNumber && number >= 1 && number <= choices.Count ? choices[number - 1]
            : text;
        if (field.Kind == FieldKind.Choice && !choices.Contains(value))
        {
            return Refuse(text.Length == 0 ? "Choose one by its number." : "There is no such number here.");
        }

        if (value.Length == 0 && !field.MayBeEmpty)
        {
            return Refuse($"{field.Label} can't be empty.");
        }

        if (field.Fault(value) is { } fault)
        {
            Line.Restore(field.Kind == FieldKind.Pin ? "" : text);
            return Refuse(fault);
        }

        if (Objection(field, value) is { } page)
        {
            return new Turn.To(page);
        }

        field.Value = value;
        field.Draft = "";
        return Next(At + 1) ? Turn.Stay : Finish();
    }

    /// <inheritdoc/>
    protected override Turn? First(string character)
    {
        if (character == "/")
        {
            return Escaped();
        }

        bool pages = Now.Choices().Count > 0 && character is "+" or "-" && Now.Choices().Count > _choicesShown;
        return pages ? base.First(character) : null;
    }

    /// <inheritdoc/>
    protected override Turn Escaped()
    {
        Now.Draft = Now.Kind == FieldKind.Pin ? "" : Line.Text;
        Line.Take();
        Say("", Ink.Plain);
        for (int at = At - 1; at >= 0; at--)
        {
            if (Fields[at].IsAsked())
            {
                Go(at);
                return Turn.Stay;
            }
        }

        Forget();
        return Turn.Back;
    }

    /// <inheritdoc/>
    protected override void Page(int by)
    {
        int last = (Now.Choices().Count - 1) / _choicesShown;
        _choicePage = Math.Clamp(_choicePage + by, 0, Math.Max(0, last));
    }

    /// <inheritdoc/>
    public override Screen? ForgetPins()
    {
        int first = Fields.ToList().FindIndex(f => f.Kind == FieldKind.Pin && f.IsAsked());
        Forget();
        if (first >= 0 && At >= first)
        {
            Line.Take();
            Go(first);
        }

        return null;
    }

    private Turn Finish()
    {
        AtFault = null;
        string? fault = Write();
        bool hasPin = Fields.Any(f => f.Kind == FieldKind.Pin && f.IsAsked());
        Forget();
        if (fault is null)
        {
            return Done();
        }

        Go(
            hasPin ? Fields.ToList().FindIndex(f => f.Kind == FieldKind.Pin && f.IsAsked())
            : AtFault is >= 0 and int at ? at
            : At
        );
        return Refuse(fault);
    }

    private bool Next(int from)
    {
        for (int at = from; at < Fields.Count; at++)
        {
            if (Fields[at].IsAsked())
            {
                Go(at);
                return true;
            }
        }

        return false;
    }

    private void Go(int at)
    {
        (_reached, _choicePage) = (at, 0);
        Line.Restore(Fields[at].Draft);
    }

    // A PIN stays no longer than it is needed.
    private void Forget()
    {
        foreach (Field field in Fields.Where(f => f.Kind == FieldKind.Pin))
        {
            field.Value = null;
        }
    }

    private void DrawField(Canvas canvas, int row, Area area, Field field)
    {
        bool now = ReferenceEquals(field, Now);
        string label = (now ? "> " : "  ") + field.Label;
        canvas.Put(area.Column, row, Fitting.Line(label, LabelWidth), now ? Ink.Strong : Ink.Quiet);
        int width = area.Width - LabelWidth - 1;
        string text = field.Kind == FieldKind.Pin ? new string('*', field.Text.Length) : field.Text;
        bool proposes = now && field.Value is null && Standing.Length > 0;
        string shown = proposes ? $"{Standing}   (proposed)" : text;
        canvas.Put(area.Column + LabelWidth + 1, row, Fitting.Line(shown, width), proposes ? Ink.Quiet : Ink.Plain);
    }

    private void DrawChoices(Canvas canvas, Area area)
    {
        IReadOnlyList<string> choices = Now.Choices();
        bool paged = choices.Count > area.Height;
        _choicesShown = Math.Max(1, paged ? area.Height - 1 : area.Height);
        int first = Math.Min(_choicePage * _choicesShown, Math.Max(0, choices.Count - 1));
        int row = area.Row;
        for (int i = first; i < Math.Min(choices.Count, first + _choicesShown); i++)
        {
            canvas.PutRight(area.Column + 3, row, (i + 1).ToString(CultureInfo.InvariantCulture), Ink.Strong);
            canvas.Put(area.Column + 5, row++, Fitting.Line(choices[i], area.Width - 5));
        }

        if (paged)
        {
            int pages = (choices.Count + _choicesShown - 1) / _choicesShown;
            string page = string.Create(CultureInfo.InvariantCulture, $"page {_choicePage + 1} of {pages}");
            canvas.PutRight(area.Column + area.Width, area.Row + area.Height - 1, page, Ink.Quiet);
        }
    }
}
