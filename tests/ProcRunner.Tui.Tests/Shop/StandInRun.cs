using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens;

namespace ProcRunner.Tui.Tests.Shop;

/// <summary>Stands where a job is worked on; what the work looks like is tested elsewhere.</summary>
internal sealed class StandInRun(JobRun run) : Screen
{
    public JobRun Run { get; } = run;

    public override void Draw(Canvas canvas, Look look) => canvas.Put(0, 0, "the run");

    public override Turn Press(KeyPress key) => key.Kind == KeyKind.Escape ? Turn.Back : Turn.Stay;
}
