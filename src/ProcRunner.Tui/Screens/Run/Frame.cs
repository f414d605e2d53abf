using System.Globalization;
using ProcRunner.Runs;
using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>
/// What every page of a run has in the same place: where one is, on top; what was recorded, the entry line and the keys, at
/// the bottom. The middle of the outer rows stays free for the practice mark.
/// </summary>
internal static class Frame
{
    /// <summary>Rows at the bottom: a rule, what was recorded, the entry line, the keys.</summary>
    public const int BottomRows = 4;

    /// <summary>The first row under the head.</summary>
    public const int Top = 2;

    private const int MarkWidth = 12;

    /// <summary>The head: job, person; stage, position and step.</summary>
    public static void Head(Canvas canvas, Look look, RunWork work)
    {
        string stamp = work.State.Job?.Stamp ?? "";
        string person = work.Job.Shop.People.TryGetValue(work.Job.Person, out People.Person? found)
            ? found.Name
            : work.Job.Person;
        int half = (canvas.Width - MarkWidth) / 2;
        int end = canvas.Put(1, 0, Cut(stamp, 14), Ink.Strong);
        bool isWide = canvas.Width >= 110;
        string head = isWide ? work.Plan.Head.Title : work.Plan.Head.Name;
        int room = half - end - person.Length - 4;
        end = room >= 8 ? canvas.Put(end + 2, 0, Cut(head, room)) : end;
        canvas.Put(end + 2, 0, Cut(person, half - end - 2), Ink.Quiet);
        if (work.Prompt is { } prompt)
        {
            canvas.PutRight(canvas.Width - 1, 0, Where(work, prompt.At, half, isWide), Ink.Strong);
        }

        Rule(canvas, look, 1);
    }

    /// <summary>The bottom: what was recorded, the entry line, the keys.</summary>
    public static void Foot(Canvas canvas, Look look, Foot foot)
    {
        int row = canvas.Height - BottomRows;
        Rule(canvas, look, row);
        canvas.Put(1, row + 1, CutBetween(foot.Said, canvas.Width - 2), Ink.Quiet);
        int column = canvas.Put(1, row + 2, foot.Label, Ink.Act) + 1;
        string shown = foot.Secret ? new string('*', foot.Typed.Length) : foot.Typed;
        int room = canvas.Width - column - foot.Unit.Length - 4;
        shown = shown.Length > room ? string.Concat("<", shown.AsSpan(shown.Length - room + 1)) : shown;
        column = canvas.Put(column, row + 2, shown, Ink.Strong);
        canvas.Cursor = (column, row + 2);
        canvas.Put(column, row + 2, '_', Ink.Strong);
        canvas.Put(column + 2, row + 2, foot.Unit, Ink.Quiet);
        canvas.Put(1, row + 3, foot.Keys, Ink.Quiet);
        canvas.PutRight(canvas.Width - 1, row + 3, foot.MoreKeys, Ink.Quiet);
    }

    /// <summary>Why the last entry wasn't taken.</summary>
    public static void Trouble(Canvas canvas, int row, int rows, Trouble trouble)
    {
        canvas.Fill(0, row, canvas.Width, rows, ' ', Ink.Plain);
        int next = canvas.PutWrapped(1, row, canvas.Width - 2, rows, $"NOT TAKEN  {trouble.Why}", Ink.Mind);
        foreach (string line in trouble.WhatToDo)
        {
            next = canvas.PutWrapped(3, next, canvas.Width - 4, Math.Max(0, row + rows - next), line);
        }
    }

    /// <summary>A line across.</summary>
    public static void Rule(Canvas canvas, Look look, int row) =>
        canvas.Fill(0, row, canvas.Width, 1, look.Glyphs.Line, Ink.Quiet);

    /// <summary>Text cut to a width.</summary>
    public static string Cut(string text, int width) =>
        width <= 0 ? ""
        : text.Length <= width ? text
        : width < 3 ? text[..width]
        : text[..(width - 2)] + "..";

    // Whole pieces as far as they go: half a number is worse than none.
    private static string CutBetween(string text, int width)
    {
        const string More = "; ...";
        if (text.Length <= width)
        {
            return text;
        }

        int end = text.LastIndexOf("; ", width - More.Length, StringComparison.Ordinal);
        return end > width / 2 ? string.Concat(text.AsSpan(0, end), More) : Cut(text, width);
    }

    // How much of the stage is still to do, this step among it, each step counted at each position it is for; on a
    // wide screen of the whole job too. What comes back counts again.
    private static string Where(RunWork work, At at, int room, bool isWide)
    {
        int stage = work.Plan.Steps[at.Step].StageIndex;
        At[] toDo = [.. work.Outlook.All.Where(a => work.Outlook.ViewOf(a) is StepView.Open or StepView.Waiting)];
        int ofStage = toDo.Count(a => work.Plan.Steps[a.Step].StageIndex == stage);
        string left = string.Create(CultureInfo.InvariantCulture, $": {ofStage} to do");
        string ofJob =
            isWide && toDo.Length > ofStage
                ? string.Create(CultureInfo.InvariantCulture, $", {toDo.Length} in all")
                : "";
        string name = work.Plan.Procedure.Stages[stage].Name.ToUpperInvariant();
        string place = $"  {work.Plan.PositionName(at.Position)}";
        return $"{Cut(name, room - left.Length - ofJob.Length - place.Length)}{left}{ofJob}{place}";
    }
}
