using ProcRunner.Procedures;
using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>The cautions of a stage, once, before its first step.</summary>
internal sealed class CautionPage(RunWork work) : RunPage(work)
{
    private readonly IReadOnlyList<Caution> _cautions = work.CautionsDue;

    /// <inheritdoc/>
    public override void Draw(Canvas canvas, Look look)
    {
        Frame.Head(canvas, look, Work);
        string stage = Work.Plan.Procedure.Stages[Work.Prompt!.Step.StageIndex].Name;
        canvas.Put(1, Frame.Top, $" Before the stage {stage}: read, then Enter ", Ink.Act);
        int bottom = canvas.Height - Frame.BottomRows;
        int row = Frame.Top + 2;
        bool roomy = _cautions.Count * 3 < bottom - row;
        foreach (Caution caution in _cautions)
        {
            row = CautionWords.Draw(canvas, 2, row, canvas.Width - 4, Math.Max(0, bottom - row), caution);
            row += roomy ? 1 : 0;
        }

        Frame.Foot(
            canvas,
            look,
            new Foot
            {
                Said = Work.Said,
                Label = "read",
                Typed = Line.Text,
                Keys = "Enter: read and understood",
            }
        );
    }

    /// <inheritdoc/>
    protected override Turn Entered(string typed)
    {
        if (typed.Trim().Length > 0)
        {
            return Refuse("Nothing is asked here.", ["Enter alone says that the cautions are read."], "");
        }

        Work.Acknowledge();
        return ToRun();
    }

    /// <inheritdoc/>
    protected override Turn Escape() => Turn.Back;
}
