using System.Globalization;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Tui.Jobs;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>Another entry in place of one: which, what it should have been, why. The first one is kept.</summary>
internal static class CorrectPages
{
    private const int MostOffered = 30;

    /// <summary>Asks which entry, the latest first.</summary>
    public static AskPage Which(RunWork work)
    {
        At[] done =
        [
            .. work
                .Outlook.All.Where(a => IsOffered(work, a))
                .OrderBy(a => work.Lesson?.Others.Does(a) == true)
                .ThenByDescending(a => work.State.Find(a)!.Sequence)
                .Take(MostOffered),
        ];
        return new AskPage(work, "Correct which entry?")
        {
            About = ["The first entry is kept beside the new one, with the reason."],
            Options =
            [
                .. done.Select(at => new Option(
                    $"{work.Plan.PositionName(at.Position), -5} {work.Plan.Steps[at.Step].FullName}: {Offered(work, at)}",
                    "",
                    _ => IsLeftOut(work, at) ? TakeBack(work, at) : new Turn.Instead(Entry(work, at))
                )),
            ],
        };
    }

    private static AskPage Entry(RunWork work, At at)
    {
        Step step = work.Plan.Steps[at.Step];
        string title = $"{work.Plan.NameOf(at)}: what should it be?";
        string[] choices = step.Work switch
        {
            StepWork.Inspect inspect => [.. inspect.Findings.Select(f => f.Text)],
            StepWork.Decide decide => [.. decide.Choices],
            _ => [],
        };
        if (choices.Length > 0)
        {
            return new AskPage(work, title)
            {
                Options = [.. choices.Select(text => new Option(text, "", _ => Why(work, at, text)))],
            };
        }

        string[] labels =
            step.Work is StepWork.Fit ? ["part number", "lot"]
            : LastWasPass(work, at) || step.Taking is not { Places.Count: > 1 } taking ? ["reading"]
            : [.. taking.Places];
        return Part(work, at, title, labels, []);
    }

    // Place by place, or all in one line; Enter alone keeps a place as it was.
    private static AskPage Part(RunWork work, At at, string title, string[] labels, string[] given)
    {
        string[] was = Places(work, at);
        return new(work, title)
        {
            About = [$"It was: {Said(work, at)}", .. given.Select((text, i) => $"{labels[i]}: {text}")],
            Label = labels[given.Length],
            Unit = UnitOf(work, at)?.Symbol ?? "",
            Typed = (_, text) => Take(text),
            OnEnter =
                was.Length == labels.Length && labels.Length > 1
                    ? ($"keeps {was[given.Length]}", _ => Take(was[given.Length]))
                    : null,
        };

        Turn Take(string text)
        {
            string[] now = [.. given, text];
            bool whole = now.Length == labels.Length || (given.Length == 0 && IsWhole(text, labels));
            return whole
                ? Why(work, at, UnitOf(work, at) is { } unit ? EntryText.Join(now, unit) : string.Join(", ", now))
                : new Turn.Instead(Part(work, at, title, labels, now));
        }
    }

    private static Unit? UnitOf(RunWork work, At at) =>
        LastWasPass(work, at) ? work.Job.Shop.Readout?.Unit
        : work.Plan.Steps[at.Step].Taking is { } taking
            ? work
                .Plan.Procedure.Characteristics[work.Plan.CharacteristicIndex(taking.Characteristic)]
                .UnitOn(work.Plan.Head)
        : null;

    // The places of the last reading as they would be typed; none where a unit would have to be typed with them.
    private static string[] Places(RunWork work, At at) =>
        work.Plan.Steps[at.Step].Taking is { } taking && work.State.Find(at) is { Readings: [.., { } last] }
            ? Bare(
                last,
                work.Plan.Procedure.Characteristics[work.Plan.CharacteristicIndex(taking.Characteristic)],
                work.Plan
            )
            : [];

    private static string[] Bare(TakenReading last, Characteristic of, Plan plan) =>
        last.Places.All(p => p.Value.Unit == of.UnitOn(plan.Head))
            ? [.. last.Places.Select(p => p.Value.Value.ToString(CultureInfo.InvariantCulture))]
            : [];

    private static bool IsWhole(string text, string[] labels) =>
        text.Contains(',', StringComparison.Ordinal)
        || text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length >= labels.Length;

    private static Turn.Instead Why(RunWork work, At at, string text) =>
        new(
            RunMenu.Reason(
                work,
                $"{work.Plan.NameOf(at)}: why is it corrected?",
                StockAnswers.Corrections,
                (page, reason) => Put(work, page, at, text, reason),
                [$"It was: {Said(work, at)}", $"It becomes: {text}"]
            )
        );

    // A correction that is questioned isn't taken: it is said here, and the run stays where it was.
    private static Turn Put(RunWork work, AskPage page, At at, string text, string reason)
    {
        At? before = work.Prompt?.At;
        JobAnswer answer = work.Do(new RunCommand.Correct(at, text, reason));
        if (answer is not JobAnswer.Recorded { Events: [RunEvent.EntryQuestioned question] })
        {
            return page.Go(answer, reason);
        }

        if (before is { } place)
        {
            work.Go(place);
        }

        IEnumerable<string> meant = question.Meanings.Count > 0 ? question.Meanings : [question.Typed];
        return new Turn.Instead(
            new AskPage(work, $"{work.Plan.NameOf(at)}: not corrected yet")
            {
                About = [$"\"{question.Typed}\": {question.Why}", $"It is still: {Said(work, at)}"],
                Options =
                [
                    .. meant.Select(one => new Option($"put in {one}", "", again => Put(work, again, at, one, reason))),
                    new("leave it as it was", "", again => again.Done()),
                ],
                Alarm = true,
            }
        );
    }

    // That a step was left out is taken back rather than corrected.
    private static Turn.Instead TakeBack(RunWork work, At at) =>
        new(
            RunMenu.Reason(
                work,
                $"{work.Plan.NameOf(at)}: why is it to be done after all?",
                StockAnswers.TakeBack,
                (page, reason) => page.Go(work.Do(new RunCommand.TakeBack(at, reason)), reason),
                [$"It was left out: {Said(work, at)}"]
            )
        );

    private static bool IsOffered(RunWork work, At at) =>
        work.State.Find(at) is { Sequence: > 0, Standing: not StepStanding.Waiting }
        && (IsLeftOut(work, at) || work.Plan.Steps[at.Step].Work is not (StepWork.Sign or StepWork.Do));

    private static bool IsLeftOut(RunWork work, At at) => work.State.StandingOf(at) == StepStanding.LeftOut;

    private static string Offered(RunWork work, At at) =>
        IsLeftOut(work, at) ? $"left out, {Said(work, at)}" : Said(work, at);

    private static bool LastWasPass(RunWork work, At at) => SaidAt.LastWasPass(work.State.Find(at)!);

    private static string Said(RunWork work, At at) => SaidAt.Of(work.State.Find(at)!);
}
