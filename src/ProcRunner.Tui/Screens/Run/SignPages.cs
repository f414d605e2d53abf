using System.Globalization;
using ProcRunner.People;
using ProcRunner.Procedures;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>A sign-off: who, the PIN, and beside a trainee a lead; before the release what it covers.</summary>
internal static class SignPages
{
    /// <summary>Who signs: the person at work first.</summary>
    public static AskPage Who(RunWork work, Prompt prompt)
    {
        StepWork.Sign sign = (StepWork.Sign)prompt.Step.Work;
        bool release = sign.Meaning == SignMeanings.Released;
        IReadOnlyList<Option> people = People(work, sign.ByLead, person => Beside(work, prompt, person));
        string stage = prompt.Stage;
        return new AskPage(
            work,
            release ? "Release this head: who signs?" : $"Sign the stage {stage}, {sign.Meaning}: who signs?"
        )
        {
            About = [.. Covered(work, prompt, release).Append(prompt.Step.Say).Where(line => line.Length > 0)],
            Options = people,
            Label = "who signs",
            OnEnter = people.Count > 0 ? (people[0].Text, people[0].Take) : null,
            Menu = true,
        };
    }

    /// <summary>The persons who may, the one at work first.</summary>
    public static IReadOnlyList<Option> People(RunWork work, bool leadsOnly, Func<Person, Turn> take) =>
        [
            .. work
                .Job.Shop.People.Values.Where(p => p.RetiredAt is null && (!leadsOnly || p.Role == Role.Lead))
                .OrderBy(p => p.Id == work.Job.Person ? 0 : 1)
                .Select(p => new Option(p.Name, RoleWord.Of(p.Role), _ => take(p))),
        ];

    /// <summary>Asks a person's PIN.</summary>
    public static Turn Pin(
        RunWork work,
        string title,
        Person person,
        Func<AskPage, string, Turn> take,
        bool isSecond = false
    ) =>
        new Turn.Instead(
            new AskPage(work, title)
            {
                HoldsPin = isSecond,
                About =
                [
                    $"{person.Name} signs; the PIN isn't shown and isn't kept.",
                    .. work.Lesson is null
                        ? Array.Empty<string>()
                        :
                        [
                            $"In practice it is {PracticeDoor.PinOf(person.Id)}, and nothing signed with it is worth anything.",
                        ],
                ],
                Label = $"PIN of {person.Name}",
                Secret = true,
                Typed = take,
            }
        );

    private static Turn Beside(RunWork work, Prompt prompt, Person person)
    {
        string title = $"{prompt.Step.FullName}";
        return Pin(
            work,
            title,
            person,
            (page, pin) =>
                person.Role == Role.Trainee
                    ? new Turn.Instead(
                        new AskPage(work, $"{person.Name} is a trainee: which lead signs beside?")
                        {
                            HoldsPin = true,
                            Options = People(
                                work,
                                leadsOnly: true,
                                lead =>
                                    Pin(
                                        work,
                                        title,
                                        lead,
                                        (last, second) =>
                                            last.Go(
                                                work.Took(work.Job.Sign(prompt.At, person.Id, pin, lead.Id, second)),
                                                ""
                                            ),
                                        isSecond: true
                                    )
                            ),
                        }
                    )
                    : page.Go(work.Took(work.Job.Sign(prompt.At, person.Id, pin, null, null)), "")
        );
    }

    // Whoever signs sees what was conceded and left out; and all of it where it is little, such as a plan to be approved.
    private static IEnumerable<string> Named(RunWork work, At[] covered, bool release)
    {
        const int Little = 6;
        string Line(string word, At at) =>
            $"{word}{work.Plan.PositionName(at.Position)}  {work.Plan.Steps[at.Step].Name}: {SaidAt.Of(work.State.Find(at)!)}";
        bool all = !release && covered.Length <= Little;
        foreach (At at in covered)
        {
            StepRecord record = work.State.Find(at)!;
            string word =
                record.Conceded ? "conceded  "
                : record.Standing == StepStanding.LeftOut ? "left out  "
                : "";
            if (all || word.Length > 0)
            {
                yield return Line(word, at);
            }
        }
    }

    private static IEnumerable<string> Covered(RunWork work, Prompt prompt, bool release)
    {
        Plan plan = work.Plan;
        At[] covered =
        [
            .. work.Outlook.All.Where(a =>
                (release || plan.Steps[a.Step].StageIndex == prompt.Step.StageIndex)
                && a.Step < prompt.At.Step
                && work.State.Find(a) is { Sequence: > 0 }
            ),
        ];
        int Count(Func<StepRecord, bool> which) => covered.Count(a => which(work.State.Find(a)!));
        yield return release
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"Covers the whole job: {work.State.Sequence} entries, {covered.Length} results, every stage signed."
            )
            : string.Create(
                CultureInfo.InvariantCulture,
                $"Covers {covered.Length} {(covered.Length == 1 ? "result" : "results")} of this stage."
            );
        int conceded = Count(r => r.Conceded);
        int leftOut = Count(r => r.Standing == StepStanding.LeftOut);
        int retaken = Count(r => r.Readings.Any(x => !x.Good));
        yield return string.Create(
            CultureInfo.InvariantCulture,
            $"Conceded: {conceded}.  Left out: {leftOut}.  Out of spec at first and put right: {retaken - conceded}."
        );
        foreach (string line in Named(work, covered, release))
        {
            yield return line;
        }

        if (work.State.Find(prompt.At) is { Standing: StepStanding.Done } before)
        {
            yield return $"Signed before by {before.Said}; what it covers has changed since.";
        }
    }
}
