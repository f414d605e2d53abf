using ProcRunner.People;
using ProcRunner.Procedures;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>The numbered menu behind the slash, and what each of its answers asks next.</summary>
internal static class RunMenu
{
    /// <summary>The coach's number in the menu of a lesson.</summary>
    public const int CoachNumber = 11;

    /// <summary>Why nothing else is done while the tool of a lesson is in the metal.</summary>
    public const string InTheMetal =
        "The tool is in the metal. Stop there, and type what the readout shows; then anything else.";

    /// <summary>Whether the coach of a lesson speaks by itself, and how it is called, in the room right of the middle.</summary>
    public static string KeysOf(LessonRun lesson)
    {
        string speaks = lesson.Coach switch
        {
            CoachMode.EachStep => "each step",
            CoachMode.Asked => "when asked",
            _ => "off",
        };
        return string.Create(
            System.Globalization.CultureInfo.InvariantCulture,
            $"/ menu   / {CoachNumber}: coach ({speaks})"
        );
    }

    // What can be done with the tool in the metal: looking, not walking away from what it has cut.
    private static readonly string[] Looks = ["why", "note", "history", "coach", "maths"];

    /// <summary>The menu. What is always there keeps its number; what this step adds stands after it.</summary>
    public static AskPage Menu(RunWork work)
    {
        Prompt? prompt = work.Prompt;
        List<Option> options =
        [
            new("why", "what this step is for, its formula, the keys", _ => To(Why(work))),
            new("note", "write a note", _ => To(Note(work))),
            new("correct", "put another entry in place of one", _ => To(CorrectPages.Which(work))),
            new("go", "to another open step or position", _ => To(Positions(work))),
            new("history", "what was entered at this position", _ => To(History(work))),
            new("changed", "report a change: cutter edge, pilot, readout", _ => To(Changes(work))),
            new("gauge", "which gauge is in use", _ => To(GaugePages.Kinds(work))),
            new("hand over", "another person goes on", _ => To(HandOver(work))),
            new("hold", "put the job aside", _ => To(Hold(work))),
            new("leave", "to the list of jobs; all that was recorded is kept", _ => Turn.Back),
        ];
        if (work.Lesson is { } lesson && prompt is not null)
        {
            options.Add(
                new("coach", "a hint for this step; when the coach speaks", _ => To(Coach(work, lesson, prompt)))
            );
        }

        if (prompt is not null)
        {
            options.AddRange(AtStep(work, prompt));
        }

        options.Add(new("maths", "work something out with these numbers; nothing is recorded", _ => Maths(work)));

        bool isInTheMetal = work.Lesson?.IsInTheMetal(prompt) == true;
        return new AskPage(work, "Menu")
        {
            Options = isInTheMetal
                ?
                [
                    .. options.Select(o =>
                        Looks.Contains(o.Text) ? o : o with { Take = page => page.No(InTheMetal, "") }
                    ),
                ]
                : options,
        };
    }

    /// <summary>A held job: nothing is worked on until it is taken up.</summary>
    public static AskPage Held(RunWork work) =>
        new(work, "ON HOLD")
        {
            About = [$"The job was put aside: {work.State.StandingReason}"],
            Options =
            [
                new("take it up again", "", page => page.Go(work.Do(new RunCommand.TakeUp()), "")),
                new("note", "write a note", _ => To(Note(work))),
                new("leave", "to the list of jobs", _ => Turn.Back),
            ],
            OnEnter = ("take it up again", page => page.Go(work.Do(new RunCommand.TakeUp()), "")),
            Stays = true,
        };

    /// <summary>Nothing can be done now.</summary>
    public static AskPage NothingOpen(RunWork work) =>
        new(work, "Nothing is open") { About = ["No step can be worked on now."], Menu = true };

    /// <summary>Asks a reason: a stock answer or typed words. A stray reading is no reason.</summary>
    public static AskPage Reason(
        RunWork work,
        string title,
        IReadOnlyList<string> stock,
        Func<AskPage, string, Turn> take,
        IReadOnlyList<string>? about = null
    ) =>
        new(work, title)
        {
            About = about ?? [],
            Label = "number, or type it",
            Options = [.. stock.Select(text => new Option(text, "", page => take(page, text)))],
            Typed = (page, text) =>
                text.Any(char.IsLetter) ? take(page, text) : page.No($"\"{text}\" isn't in words.", ""),
        };

    private static IEnumerable<Option> AtStep(RunWork work, Prompt prompt)
    {
        At at = prompt.At;
        bool cuts = prompt.Step.Work is StepWork.Cut && prompt.Awaits != Awaited.WayOn;
        if (cuts && prompt.Awaits == Awaited.Readout)
        {
            yield return new(
                "measure now",
                "lift before the target",
                page => page.Go(work.Do(new RunCommand.LiftToMeasure(at)), "")
            );
        }

        if (cuts && work.State.Find(at) is { Standing: StepStanding.InHand, Readings.Count: > 0 })
        {
            yield return new(
                "enough",
                "end this cut within its window",
                page => page.Go(work.Do(new RunCommand.EndCut(at)), "")
            );
        }

        if (prompt.Step.MayBeLeftOut && prompt.Awaits != Awaited.WayOn)
        {
            yield return new(
                "not for this head",
                "leave this step out",
                _ =>
                    To(
                        Reason(
                            work,
                            $"Leave out {prompt.Step.Name} at {prompt.Position}: why?",
                            StockAnswers.LeaveOut,
                            (page, reason) => page.Go(work.Do(new RunCommand.LeaveOut(at, reason)), reason)
                        )
                    )
            );
        }

        if (work.State.Linked.Count > 0)
        {
            yield return new("heads", "this engine's heads side by side; how they go out", _ => To(Heads(work)));
        }

        if (LimitPages.Open(work).Count > 0)
        {
            yield return new("limit", "choose one that the head spec leaves open", _ => To(LimitPages.Which(work)));
        }
    }

    private static AskPage Heads(RunWork work) =>
        new(work, "The heads of this engine")
        {
            About = work.Job.Store is { } store ? JobLinks.Heads(store, work.State) : [],
            Options =
            [
                new(
                    "they match: released together",
                    "",
                    page => page.Go(work.Took(work.Job.DecideHeads(together: true, "")), "")
                ),
                new(
                    "released apart",
                    "with why",
                    _ =>
                        To(
                            Reason(
                                work,
                                "Released apart: why?",
                                StockAnswers.Apart,
                                (page, text) => page.Go(work.Took(work.Job.DecideHeads(together: false, text)), text)
                            )
                        )
                ),
            ],
        };

    private static AskPage Coach(RunWork work, LessonRun lesson, Prompt prompt)
    {
        string Is(CoachMode mode) => lesson.Coach == mode ? "as it is now" : "";
        Option To(string words, CoachMode mode) =>
            new(
                words,
                Is(mode),
                page =>
                {
                    lesson.Keep(mode);
                    return page.Done();
                }
            );
        return new AskPage(work, "The coach")
        {
            About = lesson.Coach == CoachMode.Off ? ["The coach is off."] : Training.Coach.Hint(lesson, prompt),
            Options =
            [
                To("speak after every step", CoachMode.EachStep),
                To("speak when asked, here", CoachMode.Asked),
                To("off: the debrief says it all", CoachMode.Off),
            ],
            OnEnter = ("back to the run", page => page.Done()),
        };
    }

    private static TextPage Why(RunWork work) =>
        new(work, "Why, and the keys", work.Prompt is { } prompt ? WhyText.Of(work, prompt) : WhyText.Keys)
        {
            Further = ("1 Enter: shop maths with these numbers", () => Maths(work)),
        };

    private static Turn.To Maths(RunWork work) => new(MathsPages.Of(work));

    private static AskPage Note(RunWork work) =>
        Reason(
            work,
            "Note",
            StockAnswers.Notes,
            (page, text) => page.Go(work.Do(new RunCommand.Note(work.Prompt?.At, text)), text)
        );

    private static AskPage Positions(RunWork work)
    {
        At[] open = [.. work.Outlook.Open];
        return new AskPage(work, "Go to")
        {
            Options =
            [
                .. open.Select(at => new Option(
                    $"{work.Plan.PositionName(at.Position), -5} {work.Plan.Steps[at.Step].FullName}",
                    "",
                    page =>
                    {
                        work.Go(at);
                        return page.Done();
                    }
                )),
            ],
        };
    }

    private static TextPage History(RunWork work) =>
        work.Prompt is { } prompt
            ? new TextPage(work, $"history: {prompt.Position}", HistoryText.WithClock(work, prompt.At.Position))
            : new TextPage(work, "history", HistoryText.WithClock(work, null));

    private static AskPage Changes(RunWork work) =>
        new(work, "What has changed?")
        {
            About = ["What rests on it is to be set or measured again."],
            Options =
            [
                .. work.Plan.Procedure.Changes.Select(c => new Option(
                    c.Name,
                    c.Why,
                    page => page.Go(work.Do(new RunCommand.Report(c.Name, work.Prompt?.At.Position ?? At.Head)), "")
                )),
            ],
        };

    private static AskPage HandOver(RunWork work) =>
        new(work, "Who goes on?")
        {
            Options =
            [
                .. work
                    .Job.Shop.People.Values.Where(p => p.RetiredAt is null && p.Id != work.Job.Person)
                    .Select(p => new Option(
                        p.Name,
                        RoleWord.Of(p.Role),
                        page => page.Go(work.Do(new RunCommand.HandOver(p.Id)), "")
                    )),
            ],
        };

    private static AskPage Hold(RunWork work) =>
        Reason(
            work,
            "Put the job aside: why?",
            StockAnswers.Hold,
            (page, reason) => page.Go(work.Do(new RunCommand.Hold(reason)), reason)
        );

    private static Turn.Instead To(Screen page) => new(page);
}
