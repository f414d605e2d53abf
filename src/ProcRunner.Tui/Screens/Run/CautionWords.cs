using ProcRunner.Procedures;
using ProcRunner.Runs;
using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>Cautions with their signal words, and which of them stand beside a step.</summary>
internal static class CautionWords
{
    /// <summary>
    /// A step's own cautions; at a cutter the stage's warning about it too, though it was acknowledged when the stage began.
    /// </summary>
    public static IReadOnlyList<Caution> At(Plan plan, Step step) =>
        step.Cautions.Count > 0 || step.Work is not (StepWork.Cut or StepWork.Zero)
            ? step.Cautions
            : [.. plan.Procedure.Stages[step.StageIndex].Cautions.Where(c => c.Word == "WARNING").Take(1)];

    /// <summary>One as text.</summary>
    public static string Text(Caution caution) => $"{caution.Word}: {caution.Text}";

    /// <summary>Draws one; the row after it.</summary>
    public static int Draw(Canvas canvas, int column, int row, int width, int mostRows, Caution caution)
    {
        int next = canvas.PutWrapped(column, row, width, mostRows, Text(caution));
        if (mostRows > 0)
        {
            canvas.Put(column, row, caution.Word, InkOf(caution.Word));
        }

        return next;
    }

    private static Ink InkOf(string word) => word == "DANGER" ? Ink.Bad : Ink.Mind;
}
