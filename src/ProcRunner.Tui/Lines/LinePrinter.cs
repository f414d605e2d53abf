using System.Globalization;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Text;
using ProcRunner.Trail;

namespace ProcRunner.Tui.Lines;

/// <summary>Writes prompts, answers and refusals as lines that a person reads and a screen reader speaks.</summary>
internal sealed class LinePrinter(TextWriter output)
{
    private int _stage = -1;

    /// <summary>Writes a line; what came from people or files is made safe for a terminal.</summary>
    public void Line(string text = "") => output.WriteLine(SafeText.Show(text));

    /// <summary>The job at the head of a session.</summary>
    public void Opening(RunState state, string person)
    {
        JobHeader job = state.Job!;
        Line($"Job {job.Stamp}: {state.Plan.Head.Title}");
        Line($"Procedure: {state.Plan.Procedure.Title}, revision {Number(state.Plan.Procedure.Revision)}");
        if (job.Practice)
        {
            Line("PRACTICE: worth nothing to a customer.");
        }

        if (job.Customer.Length > 0 || job.Complaint.Length > 0)
        {
            Line($"Customer: {job.Customer}. Complaint: {job.Complaint}");
        }

        Line($"At the machine: {person}. ? lists what can be done, quit leaves.");
    }

    /// <summary>The last entry on disk, so that nobody makes it twice; nothing for a job that was only opened.</summary>
    public void Last(RunState state, IReadOnlyList<RunEvent> events)
    {
        if (state.Sequence > 1)
        {
            string where = state.LastAt is { } at ? $", {state.Plan.NameOf(at)}" : "";
            Line();
            Line($"Recorded last, entry {Number(state.Sequence)}{where}:");
            Recorded(state, events);
        }
    }

    /// <summary>The prompt of a step; cautions once a stage.</summary>
    public void Prompt(RunState state, Prompt prompt)
    {
        if (prompt.Step.StageIndex != _stage)
        {
            _stage = prompt.Step.StageIndex;
            Line();
            Line($"== {prompt.Stage} ==");
            Cautions(state.Plan.Procedure.Stages[_stage].Cautions);
        }

        Line();
        Line($"{prompt.Step.FullName}, {prompt.Position}: {prompt.ToDo}");
        Cautions(prompt.Step.Cautions);
        if (prompt.Step.Say.Length > 0)
        {
            Line($"  {prompt.Step.Say}");
        }

        if (prompt.Recheck.Length > 0)
        {
            Line($"  recheck: {prompt.Recheck}");
        }

        Details(prompt);
        Asking(prompt);
    }

    /// <summary>What came of an entry.</summary>
    public void Recorded(RunState state, IReadOnlyList<RunEvent> events)
    {
        foreach (RunEvent happened in events)
        {
            if (LineWording.Of(state, happened) is { Length: > 0 } text)
            {
                Line($"  {text}");
            }
        }
    }

    /// <summary>What an entry just corrected: what stood there, and what stands there now.</summary>
    public void Corrected(RunState state, IReadOnlyList<RunEvent> events)
    {
        if (events is [RunEvent.EntryCorrected, ..] && state.Corrections is [.., var last])
        {
            Line($"  it was {last.Was}, it is {last.Became}; both stay in the trail");
        }
    }

    /// <summary>The code of a job that is closed out; nothing for one that isn't.</summary>
    public void Proof(ProofCode? proof)
    {
        if (proof is not null)
        {
            Line($"  proof code, for the paper: {proof}");
        }
    }

    /// <summary>A refusal with what can be done.</summary>
    public void Refused(string why, IReadOnlyList<string> whatToDo)
    {
        Line($"  REFUSED: {why}");
        foreach (string way in whatToDo)
        {
            Line($"    {way}");
        }
    }

    /// <summary>Every word that can be used, a front's own first, and the steps that are open.</summary>
    public void Help(RunState state, Prompt? prompt, IReadOnlyList<LineWord> first)
    {
        if (prompt is not null)
        {
            Details(prompt);
            Asking(prompt);
        }

        Outlook outlook = new(state);
        At[] open = [.. outlook.Open];
        Line($"  open steps: {Number(open.Length)}");
        foreach (At at in open.Take(12))
        {
            Line($"    {state.Plan.NameOf(at)}");
        }

        foreach (Change change in state.Plan.Procedure.Changes)
        {
            Line($"    changed {change.Name}: {change.Why}");
        }

        foreach (LineWord word in first.Concat(LineWords.All))
        {
            Line($"    {word.Form, -52} {word.Does}");
        }
    }

    /// <summary>Why a step matters and how its numbers come about.</summary>
    public void Why(Prompt prompt)
    {
        Line($"  {(prompt.Step.Why.Length > 0 ? prompt.Step.Why : prompt.Step.Subject)}");
        if (prompt.Target is { Working.Length: > 0 } target)
        {
            Line($"  target: {target.Working}");
        }

        foreach (NumberShown number in prompt.Numbers)
        {
            Line($"  {LineWording.Worked(number.Name, number.Working, number.Value)}");
        }
    }

    /// <summary>How a way on is written.</summary>
    public static string FormOf(WayOn way) =>
        way.Kind is WayKind.Concession or WayKind.Scrap ? $"{way.Text} because REASON, by LEAD pin PIN" : way.Text;

    private void Details(Prompt prompt)
    {
        if (prompt.Window is { Origin.Length: > 0 } window)
        {
            Line($"  {LineWording.Window(window)}{(prompt.Gauge.Length > 0 ? $"; gauge {prompt.Gauge}" : "")}");
        }

        if (prompt.NoLimits.Length > 0)
        {
            Line($"  {prompt.NoLimits}");
        }

        if (prompt.Readout.Length > 0)
        {
            Line($"  readout: {prompt.Readout}");
        }

        if (prompt.Target is { } target && prompt.Awaits == Awaited.Readout)
        {
            // No finer than the readout shows.
            Quantity left = target.Left.TryConvert(
                target.Show.Unit,
                target.Show.Value.Scale,
                Rounding.Nearest,
                out Quantity rounded
            )
                ? rounded
                : target.Left;
            Line($"  {target.Working}; left {left}");
        }

        foreach (NumberShown number in prompt.Numbers)
        {
            Line($"  {number.Name}: {number.Value?.ToString() ?? number.Working}");
        }
    }

    private void Asking(Prompt prompt)
    {
        if (prompt.Question is { IsOfReading: true } doubt)
        {
            Line($"  QUESTION: {doubt.Why}");
        }
        else if (prompt.Question is { } question)
        {
            Line($"  QUESTION: \"{question.Typed}\": {question.Why} Type what is meant:");
            foreach (string meaning in question.Meanings)
            {
                Line($"    {meaning}");
            }
        }

        if (prompt.Places.Count > 0 && prompt.Awaits == Awaited.Reading)
        {
            Line($"  enter, with spaces between: {string.Join(", ", prompt.Places)} ({Symbol(prompt.Unit)})");
        }
        else if (prompt.Awaits is Awaited.Reading or Awaited.Readout or Awaited.NumberSet)
        {
            Line($"  enter one value ({Symbol(prompt.Unit)})");
        }

        foreach (string fault in prompt.Faults)
        {
            Line($"  OUT OF SPEC: {fault}");
        }

        if (prompt.Awaits == Awaited.WayOn)
        {
            WaysOn(prompt);
            return;
        }

        if (prompt.Choices.Count > 0)
        {
            Line($"  one of: {string.Join(" | ", prompt.Choices)}");
        }

        string form = prompt.Awaits switch
        {
            Awaited.Done => "enter done, and after it what there is to say of it",
            Awaited.Part => "enter NUMBER, lot LOT",
            Awaited.Signature => $"enter {LineWords.Sign.Form}; without a PIN it is asked",
            _ => "",
        };
        if (form.Length > 0)
        {
            Line($"  {form}");
        }

        if (prompt.Step.MayBeLeftOut)
        {
            Line($"  or {LineWords.LeaveOut.Form}");
        }
    }

    private void WaysOn(Prompt prompt)
    {
        Line($"  why it matters: {(prompt.Step.Why.Length > 0 ? prompt.Step.Why : prompt.Step.Subject)}");
        Line("  ways on:");
        foreach (WayOn way in prompt.WaysOn)
        {
            Line($"    {FormOf(way)}");
        }

        Line($"    a typing error: {LineWords.Correct.Form}");

        if (prompt.Step.Taking?.RetestFirst is { } retest && prompt.WaysOn.Count == 1)
        {
            Line($"    first: {retest}");
        }
    }

    private void Cautions(IReadOnlyList<Caution> cautions)
    {
        foreach (Caution caution in cautions)
        {
            Line($"  {caution.Word}: {caution.Text}");
        }
    }

    private static string Symbol(Unit? unit) => unit is null || unit.Symbol.Length == 0 ? "a number" : unit.Symbol;

    private static string Number(long value) => value.ToString(CultureInfo.InvariantCulture);
}
