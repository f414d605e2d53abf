using ProcRunner.Practice;
using ProcRunner.Practice.Operators;
using ProcRunner.Procedures;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Jobs;

namespace ProcRunner.Tui.Training;

/// <summary>
/// What the model operator does of a lesson's job under somebody else's name: all that goes before it, and beside it what is
/// due at other positions than the lesson's, so that one seat is learned on and not eight.
/// </summary>
/// <param name="lesson">The lesson.</param>
/// <param name="session">Its practice head.</param>
/// <param name="learner">Id of the learner.</param>
internal sealed class OthersWork(LessonRun lesson, PracticeSession session, string learner)
{
    /// <summary>Id of that somebody.</summary>
    public string Who { get; } = DemoShop.People.Select(person => person.Id).First(id => id != learner);

    /// <summary>True while it is at work, so that nothing of it is taken for the learner's.</summary>
    public bool IsAtWork { get; private set; }

    private JobRun Job => lesson.Job;

    private RunState State => lesson.Job.State;

    /// <summary>Works the job up to the lesson's first step and hands it over; what it couldn't do, empty when it got there.</summary>
    public string WorkUpToTheLesson()
    {
        if (lesson.Lesson.From is { } from && State.Plan.TryStep(from, out int first))
        {
            At? BeforeIt() =>
                Prompter.Next(State) is { } at && !(at.Step >= first && IsTheLessons(at.Position)) ? at : null;
            string fault = Play(BeforeIt);
            fault = fault.Length == 0 && Prompter.Next(State) is null ? "Nothing is open." : fault;

            // Step by step the run would come past every other position before the lesson is over.
            bool isPast = State.Plan.Procedure.Stages[State.Plan.Steps[first].StageIndex].Walk == Walk.ByStep;
            fault = fault.Length == 0 && isPast && lesson.Lesson.Until != from ? Play(Elsewhere) : fault;
            if (fault.Length > 0)
            {
                return fault;
            }
        }

        return HandOver(learner);
    }

    /// <summary>
    /// Where the run has come to another position, works all that is due at others up to the step that ends the lesson, then
    /// hands back; what it couldn't do, empty when there is nothing more to do.
    /// </summary>
    public string Work()
    {
        string fault = "";
        if (Elsewhere() is not null)
        {
            fault = Job.Person == Who ? "" : HandOver(Who);
            fault = fault.Length > 0 ? fault : Play(Elsewhere);
        }

        return fault.Length > 0 ? fault
            : Job.Person == Who ? HandOver(learner)
            : "";
    }

    // Only where the run itself goes on elsewhere; then whatever is open there.
    private At? Elsewhere()
    {
        State.Plan.TryStep(lesson.Lesson.Until, out int last);
        bool IsOthers(At at) => Does(at) && at.Step <= last;
        return !IsAtWork && !(Prompter.Next(State) is { } next && IsOthers(next))
            ? null
            : State.Outlook.Open.Where(IsOthers).Select(at => (At?)at).FirstOrDefault();
    }

    /// <summary>True for a step at another position than the lesson's.</summary>
    public bool Does(At at) => !IsTheLessons(at.Position);

    private bool IsTheLessons(int position) =>
        lesson.Lesson.At is null || position == At.Head || State.Plan.PositionName(position) == lesson.Lesson.At;

    private string Play(Func<At?> next)
    {
        IsAtWork = true;
        string fault = ModelOperator.Work(session, State, Job.Shop, Carry, next);
        IsAtWork = false;
        return fault;
    }

    private string HandOver(string to)
    {
        IsAtWork = true;
        string fault = LessonRun.FaultOf(Job.Do(new RunCommand.HandOver(to)));
        IsAtWork = false;
        return fault;
    }

    private (string Fault, IReadOnlyList<RunEvent> Events) Carry(RunCommand command)
    {
        (string lead, _, _, string pin) = DemoShop.People[0];
        JobAnswer answer = command switch
        {
            RunCommand.Sign sign => Job.Sign(sign.At, lead, pin, null, null),
            RunCommand.TakeWay { Mark: not null } way => Job.TakeWayByLead(
                way.At,
                Prompter.At(State, Job.Shop, way.At).WaysOn.First(w => w.Text == way.Way),
                way.Reason,
                lead,
                pin
            ),
            _ => Job.Do(command),
        };
        return answer is JobAnswer.Recorded recorded ? ("", recorded.Events) : (LessonRun.FaultOf(answer), []);
    }
}
