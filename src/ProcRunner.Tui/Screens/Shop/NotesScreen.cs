using System.Collections.Immutable;
using ProcRunner.Runs;
using ProcRunner.Trail;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>A job's notes, the latest first.</summary>
internal sealed class NotesScreen : TextScreen
{
    private readonly ShopSession _session;
    private readonly JobRun _run;
    private IReadOnlyList<TextLine> _lines = [];

    /// <summary>The notes of a job.</summary>
    public NotesScreen(ShopSession session, JobRun run)
        : base(session)
    {
        (_session, _run) = (session, run);
        Read();
    }

    /// <inheritdoc/>
    public override bool IsPractice => _run.State.Job is { Practice: true };

    /// <inheritdoc/>
    protected override string Title => $"{_run.State.Job?.Stamp}: notes";

    /// <inheritdoc/>
    protected override bool HasMenu => false;

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Keys =>
        [CanWrite ? "1 Enter writes a note" : "", PageKeys, "0 Enter back"];

    private bool CanWrite => _run.State.Standing is JobStanding.Open or JobStanding.Held;

    /// <inheritdoc/>
    public override void Return()
    {
        base.Return();
        Read();
    }

    /// <inheritdoc/>
    protected override IReadOnlyList<TextLine> Lines(int width) => _lines;

    /// <inheritdoc/>
    protected override Turn Other(string text) =>
        text == "1" && CanWrite ? new Turn.To(new NoteForm(_session, _run, null)) : base.Other(text);

    private void Read()
    {
        RunState state = _run.State;
        ImmutableArray<(TrailEntry Entry, Digest Digest)> entries = _session
            .Store.Reader.ReadTrail(state.JobId)
            .Entries;
        List<TextLine> lines = [];
        foreach ((long sequence, RunEvent.Noted note) in Enumerable.Reverse(state.Notes))
        {
            if (sequence <= entries.Length)
            {
                TrailEntry entry = entries[(int)sequence - 1].Entry;
                string where = note.At is { } at ? $", {state.Plan.NameOf(at)}" : "";
                string who = _session.NameOf(entry.Operator);
                lines.Add(new($"{Ago.Clock(entry.At.ToOffset(entry.Offset))}  {who}{where}", Ink.Quiet));
                lines.Add(new(Fitting.Words(note.Text), Indent: 2));
            }
        }

        _lines = lines.Count > 0 ? lines : [new("No notes yet.", Ink.Quiet)];
    }
}
