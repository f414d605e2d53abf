using ProcRunner.Runs;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>A head that came back beside how it went out, and the heads of one engine side by side.</summary>
internal sealed class LinksScreen : TextScreen
{
    private readonly ShopSession _session;
    private readonly JobRun _run;
    private (int Width, IReadOnlyList<TextLine> Lines) _made = (0, []);

    /// <summary>Reads both jobs.</summary>
    public LinksScreen(ShopSession session, JobRun run)
        : base(session)
    {
        (_session, _run) = (session, run);
    }

    /// <inheritdoc/>
    public override bool IsPractice => _run.State.Job is { Practice: true };

    /// <inheritdoc/>
    protected override string Title => $"{_run.State.Job?.Stamp}: beside other jobs";

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Keys =>
        [CanDecide ? "1 Enter they match" : "", CanDecide ? "2 Enter apart, why" : "", PageKeys, "0 Enter back"];

    private bool CanDecide => _run.State is { Linked.Count: > 0, Standing: JobStanding.Open };

    /// <inheritdoc/>
    public override void Return()
    {
        base.Return();
        _made = (0, []);
    }

    /// <inheritdoc/>
    protected override IReadOnlyList<TextLine> Lines(int width)
    {
        if (_made.Width != width)
        {
            _made = (width, Read(width));
        }

        return _made.Lines;
    }

    /// <inheritdoc/>
    protected override Turn Other(string text) =>
        !CanDecide ? base.Other(text)
        : text == "1" ? Together()
        : text == "2" ? new Turn.To(new ApartForm(_session, _run))
        : Refuse("There is no such number here.");

    private Turn Together()
    {
        if (_session.TakeOver(_run) is { } taken)
        {
            return Refuse(taken);
        }

        JobAnswer answer = _run.DecideHeads(together: true, "");
        if (answer is JobAnswer.Refused { WhatToDo: [var first, ..] } refused)
        {
            return Refuse($"{refused.Why} {first}");
        }

        if (ShopSession.FaultOf(answer) is { } fault)
        {
            return Refuse(fault);
        }

        _made = (0, []);
        Say("Written down: they match, released together.", Ink.Strong);
        return Turn.Stay;
    }

    private IReadOnlyList<TextLine> Read(int width)
    {
        IReadOnlyList<string> lines = JobLinks.Lines(_session.Store.Reader, _session.Store.Index, _run.State, width);
        return lines.Count == 0
            ? [new("It is no comeback, nor did it come back, and no other head is linked with it.", Ink.Quiet)]
            :
            [
                .. lines.Select(line => new TextLine(
                    Fitting.Words(line.TrimStart()),
                    InkOf(line),
                    line.Length - line.TrimStart().Length
                )),
            ];
    }

    private static Ink InkOf(string line) =>
        line.StartsWith("==", StringComparison.Ordinal) ? Ink.Strong
        : line.Contains("PAST", StringComparison.Ordinal) && !line.StartsWith("used:", StringComparison.Ordinal)
        || line.EndsWith("TOO FAR APART", StringComparison.Ordinal)
            ? Ink.Mind
        : Ink.Plain;
}
