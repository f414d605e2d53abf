using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Run;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Tests.Training;

/// <summary>
/// Takes a lesson the way it is to be taken: types what the faces show, works to the targets, answers what is planted. A wrong
/// way is a function that answers some prompts otherwise.
/// </summary>
/// <param name="run">The lesson.</param>
/// <param name="wrong">What is answered otherwise: the text, or null where it is answered rightly.</param>
internal sealed class ScriptedLearner(LessonRun run, Func<LessonRun, Prompt, string?>? wrong = null)
{
    public const string Id = "finch";
    private const int MostAnswers = 400;
    private const string Pin = "1357";
    private readonly HashSet<At> _refused = [];

    /// <summary>What was entered: every answer, and every further place of a reading.</summary>
    public int Entries { get; private set; }

    /// <summary>Faces and answers, in order.</summary>
    public List<string> Trace { get; } = [];

    private (string Id, string Pin) Lead => (DemoShop.People[0].Id, DemoShop.People[0].Pin);

    public static Prompt At(LessonRun run) =>
        Prompter.At(run.Job.State, run.Job.Shop, Prompter.Next(run.Job.State)!.Value);

    /// <summary>Goes on until the lesson is over.</summary>
    public ScriptedLearner ToTheEnd()
    {
        for (int i = 0; !run.IsOver; i++)
        {
            Assert.True(i < MostAnswers, $"no end: {string.Join('\n', Trace.TakeLast(40))}");
            Answer();
        }

        return this;
    }

    /// <summary>Answers one prompt.</summary>
    public void Answer()
    {
        Prompt prompt = At(run);
        string name = run.Job.State.Plan.NameOf(prompt.At);

        // Other positions than the lesson's are somebody else's.
        bool isHere = prompt.At.Position == Runs.At.Head || prompt.Position == (run.Lesson.At ?? prompt.Position);
        Assert.True(isHere, $"asked elsewhere: {name}");
        Trace.AddRange(GaugeView.Lines(run, prompt));
        string text = wrong?.Invoke(run, prompt) ?? Right(prompt);
        Trace.Add($"{name}: {text}");
        Entries += Math.Max(1, prompt.Places.Count);
        JobAnswer answer = Give(prompt, text);
        bool isRelease = prompt.Step.FullName == "assemble / released";
        Assert.True(answer is JobAnswer.Recorded || isRelease, $"{name}: {text}: {answer}");
    }

    private JobAnswer Give(Prompt prompt, string text)
    {
        const string Correcting = "correct ";
        if (text.StartsWith(Correcting, StringComparison.Ordinal))
        {
            string[] parts = text[Correcting.Length..].Split(" = ");
            Assert.True(run.Job.State.Plan.TryStep(parts[0], out int step));
            return run.Job.Do(new RunCommand.Correct(new At(step, Runs.At.Head), parts[1], "called off"));
        }

        return prompt.Awaits switch
        {
            Awaited.WayOn => Way(prompt, text),
            Awaited.Signature when prompt.Step.Work is StepWork.Sign { Meaning: "measured" } => run.Job.Sign(
                prompt.At,
                Id,
                Pin,
                Lead.Id,
                Lead.Pin
            ),
            Awaited.Signature => run.Job.Sign(prompt.At, Lead.Id, Lead.Pin, null, null),
            _ when text == "left out" => run.Job.Do(new RunCommand.LeaveOut(prompt.At, "not needed")),
            _ => run.Job.Do(new RunCommand.Enter(prompt.At, text)),
        };
    }

    private JobAnswer Way(Prompt prompt, string text)
    {
        WayOn way = prompt.WaysOn.First(w => w.Text == text || (text == "concession" && w.Kind == WayKind.Concession));
        return way.Kind is WayKind.Concession or WayKind.Scrap
            ? run.Job.TakeWayByLead(prompt.At, way, "as measured", Lead.Id, Lead.Pin)
            : run.Job.Do(new RunCommand.TakeWay(prompt.At, way.Text, "as measured", null));
    }

    private string Right(Prompt prompt)
    {
        string? planted = run
            .Lesson.Planted.FirstOrDefault(f =>
                f.Step == prompt.Step.FullName && (f.Position is null || f.Position == prompt.Position)
            )
            ?.Answer;
        if (CalledOff(prompt) is { } correction)
        {
            return correction;
        }

        return prompt.Awaits switch
        {
            Awaited.Reading when run.Shown(prompt) is { Count: > 0 } shown => string.Join("; ", shown),
            Awaited.Reading => Skim(prompt),
            Awaited.NumberSet => prompt.NumberToSet.ToString()!,
            Awaited.Readout => prompt.Target!.Show.ToString(),
            Awaited.Finding => run.Seen(prompt),
            Awaited.Choice => planted ?? Choice(prompt),
            Awaited.Part => "P-1, lot P",
            Awaited.WayOn => planted is not null && prompt.WaysOn.Any(w => w.Text == planted)
                ? planted
                : WayOut(prompt),
            _ => prompt.Step.FullName == "seat cut / lap the seat" ? "left out" : "done",
        };
    }

    // Where a plan is to be put right, that is done as soon as it is heard.
    private string? CalledOff(Prompt prompt) =>
        run.Told(prompt).Length > 0
        && run.Lesson.Planted.FirstOrDefault(f => f.Answer == "none") is { } fault
        && run.IsCaught(fault) != true
            ? $"correct {fault.Step} = 0 in"
            : null;

    // What the deck needs and a little for levelling, up to a whole thousandth.
    private string Skim(Prompt prompt)
    {
        RunState state = run.Job.State;
        Quantity needed = (state.Value("cut needed", Runs.At.Head) ?? state.Value("clean-up cut", Runs.At.Head)!).Value;
        decimal wanted = Math.Ceiling((needed.Value + 0.002m) * 1000) / 1000;
        return new Quantity(Math.Min(wanted, prompt.Window.High!.Value.Value), needed.Unit).ToString();
    }

    private static string Choice(Prompt prompt) =>
        prompt.Step.FullName == "teardown / valve" ? "reface"
        : prompt.Choices.Contains("keep") ? "keep"
        : prompt.Choices[0];

    // Measured again once; then the first rework.
    private string WayOut(Prompt prompt) =>
        _refused.Add(prompt.At) && prompt.WaysOn.Any(w => w.Kind == WayKind.Again)
            ? prompt.WaysOn.First(w => w.Kind == WayKind.Again).Text
            : prompt.WaysOn.First(w => w.Kind is WayKind.Rework or WayKind.Replace).Text;
}
