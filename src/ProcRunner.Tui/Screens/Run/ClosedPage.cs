using System.Globalization;
using ProcRunner.Runs;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Screens.Shop;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>A job that is closed: released or scrapped.</summary>
internal sealed class ClosedPage(RunWork work) : RunPage(work)
{
    /// <inheritdoc/>
    public override void Draw(Canvas canvas, Look look)
    {
        bool released = Work.State.Standing == JobStanding.Released;
        Frame.Head(canvas, look, Work);
        canvas.Put(1, Frame.Top, released ? " RELEASED " : " SCRAPPED ", released ? Ink.Good : Ink.Bad);
        string[] lines = released ? Released() : [$"Reason: {Work.State.StandingReason}"];
        lines = [.. lines, "", .. Closing()];
        int row = Frame.Top + 2;
        foreach (string line in lines)
        {
            row = canvas.PutWrapped(2, row, canvas.Width - 4, 3, line);
        }

        if (Trouble is { } trouble)
        {
            Frame.Trouble(canvas, canvas.Height - Frame.BottomRows - 2, 2, trouble);
        }

        Frame.Foot(
            canvas,
            look,
            new Foot
            {
                Said = Work.Said,
                Label = "closed",
                Typed = Line.Text,
                Keys = "Enter: leave the job",
                MoreKeys = Work.Session is null ? "/ history" : "1 Enter: build record   / history",
            }
        );
    }

    /// <inheritdoc/>
    protected override Turn Entered(string typed) =>
        typed.Trim() switch
        {
            "" => Turn.Back,
            "1" when Work.Session is { } session => new Turn.To(new RecordForm(session, Work.Job, Machine.HomeFolder)),
            _ => Refuse("The job is closed: nothing is entered here.", [], ""),
        };

    /// <inheritdoc/>
    protected override Turn Slash() =>
        new Turn.Instead(new TextPage(Work, "the job, entry by entry", HistoryText.WithClock(Work, null)));

    /// <inheritdoc/>
    protected override Turn Escape() => Turn.Back;

    private string[] Released()
    {
        string job = Work.State.Job!.Stamp;
        return
        [
            $"{job}: {Work.Plan.Head.Title}",
            $"Customer: {Work.State.Job.Customer}",
            $"Released by {Work.State.Find(Work.State.LastAt!.Value)?.Said}; the signature covers every entry of the job.",
        ];
    }

    private IEnumerable<string> Closing()
    {
        yield return "Proof code, for the paper record; find and verify take it:";
        yield return $"{Work.Job.Proof}";
        string conceded = string.Join(
            ", ",
            Work.Outlook.All.Where(at => Work.State.Find(at) is { Conceded: true }).Select(Work.Plan.NameOf)
        );
        if (conceded.Length > 0)
        {
            yield return "";
            yield return $"Conceded: {conceded}.";
        }

        if (Work.State.Corrections.Count > 0)
        {
            string count = Work.State.Corrections.Count.ToString(CultureInfo.InvariantCulture);
            yield return "";
            yield return $"Corrected on the way: {count}. What was there before stays in the history.";
        }
    }
}
