using ProcRunner.Procedures;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;

namespace ProcRunner.Tui.Lines;

/// <summary>What is entered at the step in hand, and the words that are about it.</summary>
internal sealed class StepWords(LineTalk talk)
{
    /// <summary>Takes a line; true when nothing needs to be shown again.</summary>
    public bool Take(string text)
    {
        if (LineWords.After(LineWords.Correct, text) is { } correction)
        {
            return Correct(correction);
        }

        if (talk.Focus() is not { } at)
        {
            return talk.Refuse("no step is open", []);
        }

        if (LineWords.After(LineWords.LeaveOut, text) is { } leave)
        {
            return talk.Do(new RunCommand.LeaveOut(at, LineWords.Because(leave).Reason));
        }

        StepWork work = talk.State.Plan.Steps[at.Step].Work;
        if (LineWords.After(LineWords.Sign, text) is { } sign)
        {
            return work is StepWork.Sign
                ? Sign(at, sign)
                : talk.Refuse($"the run is at {talk.State.Plan.NameOf(at)}, which is no sign-off", []);
        }

        Prompt prompt = Prompter.At(talk.State, talk.Job.Shop, at);
        if (prompt.Awaits == Awaited.WayOn)
        {
            return Way(at, prompt, text);
        }

        if (LineWords.After(LineWords.Lift, text) is "" && work is StepWork.Cut)
        {
            return talk.Do(new RunCommand.LiftToMeasure(at));
        }

        return LineWords.After(LineWords.Enough, text) is ""
            ? talk.Do(new RunCommand.EndCut(at))
            : talk.Do(new RunCommand.Enter(at, text));
    }

    private bool Way(At at, Prompt prompt, string text)
    {
        (string words, string rest) = LineWords.Because(text);
        string name = words.Split(" by ", 2, StringSplitOptions.TrimEntries)[0];
        WayOn? way = prompt.WaysOn.FirstOrDefault(w => string.Equals(w.Text, name, StringComparison.OrdinalIgnoreCase));
        if (way is null)
        {
            return talk.Refuse(
                $"\"{text}\" is none of the ways on from {talk.State.Plan.NameOf(at)}: {string.Join("; ", prompt.Faults)}",
                [.. prompt.WaysOn.Select(LinePrinter.FormOf)]
            );
        }

        if (way.Kind is not (WayKind.Concession or WayKind.Scrap))
        {
            return talk.Do(new RunCommand.TakeWay(at, way.Text, rest, null));
        }

        string[] parts = rest.Split(", by ", 2, StringSplitOptions.TrimEntries);
        string[] who = parts.Length == 2 ? parts[1].Split(' ', StringSplitOptions.RemoveEmptyEntries) : [];
        if (parts[0].Length == 0 || who.Length == 0)
        {
            return talk.Refuse($"a {way.Text} needs a reason and a lead", [LinePrinter.FormOf(way)]);
        }

        string pin = who is [_, "pin", var given] ? given : talk.Input.Secret($"PIN of {who[0]}: ");
        return talk.Answer(talk.Job.TakeWayByLead(at, way, parts[0], who[0], pin));
    }

    private bool Sign(At at, string text)
    {
        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        string person = talk.Job.Person;
        string? pin = null;
        string? beside = null;
        string? besidePin = null;
        for (int i = 0; i + 1 < words.Length; i += 2)
        {
            switch (words[i])
            {
                case "as":
                    person = words[i + 1];
                    break;
                case "pin" when beside is null:
                    pin = words[i + 1];
                    break;
                case "pin":
                    besidePin = words[i + 1];
                    break;
                case "beside":
                    beside = words[i + 1];
                    break;
                default:
                    return talk.Refuse($"\"{words[i]}\" means nothing in a sign-off", [LineWords.Sign.Form]);
            }
        }

        pin ??= talk.Input.Secret($"PIN of {person}: ");
        besidePin ??= beside is null ? null : talk.Input.Secret($"PIN of {beside}: ");
        return talk.Answer(talk.Job.Sign(at, person, pin, beside, besidePin));
    }

    private bool Correct(string text)
    {
        (string entry, string reason) = LineWords.Because(text);
        At? at = talk.State.LastAt ?? talk.Focus();
        int colon = entry.IndexOf(':', StringComparison.Ordinal);
        if (colon > 0)
        {
            (at, string fault) = StepFinder.Find(talk.State, entry[..colon].Trim());
            if (at is null)
            {
                return talk.Refuse(fault, []);
            }

            entry = entry[(colon + 1)..].Trim();
        }

        return at is { } place
            ? talk.Do(new RunCommand.Correct(place, entry, reason))
            : talk.Refuse("no step is open", [LineWords.Correct.Form]);
    }
}
