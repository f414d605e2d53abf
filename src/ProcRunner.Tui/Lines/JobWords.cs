using ProcRunner.Runs;
using ProcRunner.Tui.Jobs;

namespace ProcRunner.Tui.Lines;

/// <summary>The words of line mode that are about the job rather than the step in hand.</summary>
internal sealed class JobWords(LineTalk talk)
{
    /// <summary>Takes a line; null when it isn't one of these words, true when nothing needs to be shown again.</summary>
    public bool? Take(string text)
    {
        if (LineWords.After(LineWords.Note, text) is { } note)
        {
            return talk.Do(new RunCommand.Note(talk.Focus(), note));
        }

        if (LineWords.After(LineWords.Hold, text) is { } hold)
        {
            return talk.Do(new RunCommand.Hold(LineWords.Because(hold).Reason));
        }

        if (LineWords.After(LineWords.TakeUp, text) is "")
        {
            return talk.Do(new RunCommand.TakeUp());
        }

        if (LineWords.After(LineWords.HandOver, text) is { } to)
        {
            return talk.Do(new RunCommand.HandOver(to));
        }

        if (HeadsWord(text) is { } shown)
        {
            return shown;
        }

        if (LineWords.After(LineWords.Gauge, text) is { } gauge && gauge.Split('=') is [var kind, var id])
        {
            return talk.Do(new RunCommand.ChooseGauge(kind.Trim(), id.Trim()));
        }

        if (LineWords.After(LineWords.Limit, text) is { } limit)
        {
            return Limit(limit);
        }

        if (LineWords.After(LineWords.TakeBack, text) is { } back)
        {
            return TakeBack(back);
        }

        return LineWords.After(LineWords.Changed, text) is { } change
            ? talk.Do(new RunCommand.Report(change, talk.Focus()?.Position ?? At.Head))
            : null;
    }

    private bool? HeadsWord(string text)
    {
        if (LineWords.After(LineWords.HeadsTogether, text) is "")
        {
            return talk.Answer(talk.Job.DecideHeads(together: true, ""));
        }

        if (LineWords.After(LineWords.HeadsApart, text) is { } apart)
        {
            return talk.Answer(talk.Job.DecideHeads(together: false, LineWords.Because(apart).Reason));
        }

        if (LineWords.After(LineWords.Heads, text) is "" && talk.Job.Store is { } store)
        {
            foreach (
                string line in JobLinks
                    .Heads(store, talk.State)
                    .DefaultIfEmpty("No other head is linked with this one.")
            )
            {
                talk.Printer.Line(line);
            }

            return true;
        }

        return null;
    }

    private bool TakeBack(string text)
    {
        (string place, string reason) = LineWords.Because(text);
        (At? at, string fault) = StepFinder.Find(talk.State, place);
        return at is { } found
            ? talk.Do(new RunCommand.TakeBack(found, reason))
            : talk.Refuse(fault, [LineWords.TakeBack.Form]);
    }

    private bool Limit(string text)
    {
        (string before, string reason) = LineWords.Because(text);
        LimitLine? line = LimitLine.Read(talk.State, before);
        return line is null
            ? talk.Refuse($"\"{text}\" can't be read as a limit", [LineWords.Limit.Form])
            : talk.Do(new RunCommand.ChooseLimit(line.Name, line.Position, line.Low, line.Aim, line.High, reason));
    }
}
