using ProcRunner.Procedures;
using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>The cautions of a stage, once, before its first step.</summary>
internal sealed class CautionPage(RunWork work) : ReadFirstPage(work)
{
    private readonly IReadOnlyList<Caution> _cautions = work.CautionsDue;

    /// <inheritdoc/>
    protected override string Title =>
        $"Before the stage {Work.Plan.Procedure.Stages[Work.Prompt!.Step.StageIndex].Name}: read, then Enter";

    /// <inheritdoc/>
    protected override string Label => "read";

    /// <inheritdoc/>
    protected override string EnterSays => "read and understood";

    /// <inheritdoc/>
    protected override void DrawText(Canvas canvas, int top, int end)
    {
        int row = top;
        bool roomy = _cautions.Count * 3 < end - row;
        foreach (Caution caution in _cautions)
        {
            row = CautionWords.Draw(canvas, 2, row, canvas.Width - 4, Math.Max(0, end - row), caution);
            row += roomy ? 1 : 0;
        }
    }

    /// <inheritdoc/>
    protected override void Read() => Work.Acknowledge();
}
