using ProcRunner.Practice;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Shop;

namespace ProcRunner.Tui.Training;

/// <summary>
/// The machine's readout while a learner feeds the tool by hand: it moves with every turn, and where it stops is for the
/// learner to read. A number entered otherwise than shown leaves the tool where it was; a note before the entry says where, so
/// that the lesson goes on the same from its trail.
/// </summary>
/// <param name="session">The head under the tool.</param>
/// <param name="book">Where it is kept how far a tool was fed.</param>
/// <param name="job">Id of the job.</param>
internal sealed class HandFeed(PracticeSession session, ToolBook book, string job)
{
    /// <summary>How such a note begins.</summary>
    public const string Stood = "practice: the readout stood at ";

    private readonly Dictionary<At, (Quantity Shows, int Turns)> _fed = [];
    private readonly Dictionary<At, Quantity> _noted = [];
    private readonly Dictionary<At, Quantity> _stands = [];

    /// <summary>What the readout shows at a cut; null elsewhere.</summary>
    public Quantity? Shows(Prompt prompt) =>
        prompt is not { Awaits: Awaited.Readout, Progress: { } progress } || !session.Cuts(prompt.At) ? null
        : _fed.TryGetValue(prompt.At, out (Quantity Shows, int Turns) fed) ? fed.Shows
        : session.Binding.Setup.Readout.StepMode ? new Quantity(0, progress.Readout.Unit)
        : _stands.TryGetValue(prompt.At, out Quantity stands) ? stands
        : progress.Readout;

    /// <summary>How many turns the tool was fed since it last stopped.</summary>
    public int Turns(Prompt prompt) => prompt.Awaits == Awaited.Readout ? _fed.GetValueOrDefault(prompt.At).Turns : 0;

    /// <summary>One turn of the feed.</summary>
    public void Turn(Prompt prompt, bool isCoarse)
    {
        if (Shows(prompt) is { } shows)
        {
            int turns = Turns(prompt);
            Quantity now = session.Feed(prompt.At, shows, turns, isCoarse);
            _fed[prompt.At] = (now, turns + 1);
            book.Keep(session.Binding.Plan, job, new(prompt.At, session.Passes(prompt.At), turns + 1, now));
        }
    }

    /// <summary>A tool that was left in the metal stands where it was, as long as nothing was entered since.</summary>
    public void TakeUp(RunState state)
    {
        if (
            book.Read(state.Plan, job) is { } stand
            && stand.Pass == session.Passes(stand.At)
            && state.Outlook.Open.Contains(stand.At)
        )
        {
            _fed[stand.At] = (stand.Shows, stand.Turns);
        }
    }

    /// <summary>The note that has to go before an entry; null where what is typed is what the readout shows.</summary>
    public RunCommand.Note? NoteFor(Prompt prompt, Quantity shows, string typed)
    {
        EntryResult entry = EntryText.Parse(typed, new FieldHint(shows.Unit, 1, 1));
        bool isRight =
            entry is not EntryResult.Taken { Values: [var value] }
            || value.Dimension != shows.Dimension
            || value.CompareTo(shows) == 0;
        bool isNoted = _noted.TryGetValue(prompt.At, out Quantity noted);
        return isNoted && noted.CompareTo(shows) == 0 ? null
            : isRight && !isNoted ? null
            : new RunCommand.Note(prompt.At, $"{Stood}{shows}");
    }

    /// <summary>Takes over what happened; the misreading where a pass was entered otherwise than the readout stood.</summary>
    public Misread? Take(RunEvent happened)
    {
        switch (happened)
        {
            case RunEvent.Noted { At: { } at, Text: var text } when StoodAt(text) is { } stood:
                _noted[at] = stood;
                session.StandsAt(at, stood);
                return null;
            case RunEvent.PassCut pass:
                return Passed(pass);
            case RunEvent.ZeroSet or RunEvent.Reopened:
                _fed.Clear();
                _stands.Clear();
                return null;
            default:
                return null;
        }
    }

    private static Quantity? StoodAt(string note) =>
        note.StartsWith(Stood, StringComparison.Ordinal) && Quantity.TryParse(note[Stood.Length..], out Quantity stood)
            ? stood
            : null;

    private Misread? Passed(RunEvent.PassCut pass)
    {
        if (_fed.Remove(pass.At))
        {
            book.Clear(job);
        }

        _stands.Remove(pass.At);
        if (!_noted.Remove(pass.At, out Quantity stood) || stood.CompareTo(pass.Progress.Readout) == 0)
        {
            return null;
        }

        _stands[pass.At] = stood;
        Readout readout = session.Binding.Setup.Readout;
        Quantity step = new(readout.Step, readout.Unit);
        return new Misread(
            pass.At,
            Misread.OfReadout,
            pass.Progress.Readout,
            stood,
            new Gauge("", "readout", "readout", step, step, null, null)
        );
    }
}
