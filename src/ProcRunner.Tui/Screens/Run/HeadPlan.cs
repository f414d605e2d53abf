using System.Globalization;
using ProcRunner.Procedures;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>
/// The head from above, front at the left: every position with its mark for the step in hand and its latest value of what
/// is measured. A row for each kind of valve, a column for each cylinder.
/// </summary>
internal sealed class HeadPlan
{
    private const int FullCell = 18;

    private static readonly (PlaceMark Mark, char Shape, string Word, Ink Ink)[] Marks =
    [
        (PlaceMark.Waiting, 'o', "waiting", Ink.Plain),
        (PlaceMark.Now, '>', "now", Ink.Act),
        (PlaceMark.Done, '=', "done", Ink.Quiet),
        (PlaceMark.Out, 'X', "out", Ink.Bad),
        (PlaceMark.Recheck, '?', "recheck", Ink.Mind),
        (PlaceMark.NotHere, '.', "not here", Ink.Quiet),
    ];

    private readonly (string Name, PlaceMark Mark, string Value)[] _cells;
    private readonly string[] _kinds;
    private readonly int[] _cylinders;
    private readonly Plan _plan;

    private HeadPlan(Plan plan, (string, PlaceMark, string)[] cells)
    {
        (_plan, _cells) = (plan, cells);
        _kinds = [.. plan.Positions.Select(p => p.Kind).Distinct()];
        _cylinders = [.. plan.Positions.Select(p => p.Cylinder).Distinct()];
    }

    /// <summary>Rows of the picture, its legend included.</summary>
    public int RowsAt(bool roomy) => (_kinds.Length * (roomy ? 2 : 1)) + 1;

    /// <summary>The plan for a prompt.</summary>
    public static HeadPlan Of(RunWork work, Prompt prompt)
    {
        (string, PlaceMark, string)[] cells =
        [
            .. Enumerable
                .Range(0, work.Plan.Positions.Count)
                .Select(p => (work.Plan.PositionName(p), MarkOf(work, prompt, p), ValueOf(work, prompt, p))),
        ];
        return new HeadPlan(work.Plan, cells);
    }

    /// <summary>The mark of a position.</summary>
    public PlaceMark MarkAt(int position) => _cells[position].Mark;

    /// <summary>Draws it over the whole width.</summary>
    public void Draw(Canvas canvas, int row, bool roomy)
    {
        int cell = (canvas.Width - 2) / Math.Max(1, _cylinders.Length);
        for (int i = 0; i < _cells.Length; i++)
        {
            Position position = _plan.Positions[i];
            int column = 1 + (Array.IndexOf(_cylinders, position.Cylinder) * cell);
            Draw(canvas, column, row + (Array.IndexOf(_kinds, position.Kind) * (roomy ? 2 : 1)), cell - 1, _cells[i]);
        }

        int at = canvas.Put(1, row + RowsAt(roomy) - 1, "front at the left:", Ink.Quiet);
        foreach ((_, char shape, string word, Ink ink) in Marks)
        {
            canvas.Put(at + 2, row + RowsAt(roomy) - 1, shape, ink);
            at = canvas.Put(at + 4, row + RowsAt(roomy) - 1, word, Ink.Quiet);
        }
    }

    private static void Draw(
        Canvas canvas,
        int column,
        int row,
        int width,
        (string Name, PlaceMark Mark, string Value) cell
    )
    {
        (_, char shape, string word, Ink ink) = Array.Find(Marks, m => m.Mark == cell.Mark);
        canvas.Fill(column, row, width, 1, ' ', cell.Mark == PlaceMark.Now ? Ink.Act : Ink.Plain);
        int at = canvas.Put(column, row, cell.Name, cell.Mark == PlaceMark.NotHere ? Ink.Quiet : ink);
        canvas.Put(at + 1, row, shape, ink);
        string value = width < FullCell + 2 ? Short(cell.Value) : cell.Value;
        int end = canvas.Put(at + 3, row, Frame.Cut(value, width - 5), ink);
        int from = value.Length == 0 ? at + 3 : Math.Max(end + 1, at + (width < FullCell + 2 ? 9 : 11));
        if (column + width - from >= word.Length)
        {
            canvas.Put(from, row, word, ink);
        }
    }

    private static string Short(string value) =>
        value.StartsWith("0.", StringComparison.Ordinal) ? value[1..]
        : value.StartsWith("-0.", StringComparison.Ordinal) ? $"-{value[2..]}"
        : value;

    private static PlaceMark MarkOf(RunWork work, Prompt prompt, int position) =>
        prompt.Step.OfHead ? OfStage(work, prompt.Step.StageIndex, position)
        : !work.Plan.PositionsOf(prompt.Step).Contains(position) ? PlaceMark.NotHere
        : OfStep(work, new At(prompt.At.Step, position), prompt.At);

    private static PlaceMark OfStep(RunWork work, At at, At now) =>
        work.State.StandingOf(at) == StepStanding.Out ? PlaceMark.Out
        : at == now ? PlaceMark.Now
        : work.Outlook.IsRecheck(at) ? PlaceMark.Recheck
        : work.Outlook.ViewOf(at) switch
        {
            StepView.NotHere => PlaceMark.NotHere,
            StepView.Done => PlaceMark.Done,
            StepView.Later => PlaceMark.Recheck,
            _ when IsStale(work, at) => PlaceMark.Recheck,
            _ => PlaceMark.Waiting,
        };

    // A step still to come whose value is there from an earlier one, and has gone stale since.
    private static bool IsStale(RunWork work, At at) =>
        work.Plan.Steps[at.Step].Taking is { } taking
        && work.State.Value(taking.Characteristic, at.Position) is { Stale: true };

    // For a step of the head a position stands as its steps of the stage do.
    private static PlaceMark OfStage(RunWork work, int stage, int position)
    {
        PlaceMark[] marks =
        [
            .. work
                .Outlook.All.Where(a => a.Position == position && work.Plan.Steps[a.Step].StageIndex == stage)
                .Select(a => OfStep(work, a, default(At) with { Step = -1 }))
                .Where(m => m != PlaceMark.NotHere),
        ];
        return marks.Length == 0 ? PlaceMark.NotHere
            : marks.Contains(PlaceMark.Out) ? PlaceMark.Out
            : marks.Contains(PlaceMark.Recheck) ? PlaceMark.Recheck
            : marks.Contains(PlaceMark.Waiting) ? PlaceMark.Waiting
            : PlaceMark.Done;
    }

    private static string ValueOf(RunWork work, Prompt prompt, int position)
    {
        if (prompt.Step.Taking is { } taking)
        {
            return
                !work.Plan.IsOfHead(taking.Characteristic)
                && work.State.Value(taking.Characteristic, position) is { } value
                ? value.Value.Value.ToString(CultureInfo.InvariantCulture)
                : "";
        }

        return prompt.Step.OfHead ? "" : work.State.Find(new At(prompt.At.Step, position))?.Said ?? "";
    }
}
