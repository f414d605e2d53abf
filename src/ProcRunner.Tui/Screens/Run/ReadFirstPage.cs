using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>A page that is read before the run goes on: Enter alone says that it was.</summary>
internal abstract class ReadFirstPage(RunWork work) : RunPage(work)
{
    private const int TroubleRows = 3;

    /// <summary>What it is, in its first line.</summary>
    protected abstract string Title { get; }

    /// <summary>What is waited for, before the entry line.</summary>
    protected abstract string Label { get; }

    /// <summary>What Enter says.</summary>
    protected abstract string EnterSays { get; }

    /// <summary>Further keys at the foot, left of the middle's right.</summary>
    protected virtual string MoreKeys => "/ menu";

    /// <inheritdoc/>
    public sealed override void Draw(Canvas canvas, Look look)
    {
        Frame.Head(canvas, look, Work);
        canvas.Put(1, Frame.Top, $" {Title} ", Ink.Act);
        DrawText(canvas, Frame.Top + 2, canvas.Height - Frame.BottomRows);
        if (Trouble is { } trouble)
        {
            Frame.Trouble(canvas, canvas.Height - Frame.BottomRows - TroubleRows, TroubleRows, trouble);
        }

        Frame.Foot(
            canvas,
            look,
            new Foot
            {
                Said = Work.Said,
                Label = Label,
                Typed = Line.Text,
                Keys = $"Enter: {EnterSays}",
                MoreKeys = MoreKeys,
            }
        );
    }

    /// <summary>Draws what is to be read.</summary>
    /// <param name="canvas">Where.</param>
    /// <param name="top">The first row.</param>
    /// <param name="end">The row after the last.</param>
    protected abstract void DrawText(Canvas canvas, int top, int end);

    /// <summary>It was read.</summary>
    protected abstract void Read();

    /// <inheritdoc/>
    protected sealed override Turn Entered(string typed)
    {
        if (typed.Trim().Length > 0)
        {
            return Refuse("Nothing is asked here.", [$"Enter alone: {EnterSays}."], "");
        }

        Read();
        return ToRun();
    }

    /// <inheritdoc/>
    protected sealed override Turn Escape() => Turn.Back;
}
