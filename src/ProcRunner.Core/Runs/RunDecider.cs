using ProcRunner.Procedures;
using ProcRunner.Shop;
using ProcRunner.Text;

namespace ProcRunner.Runs;

/// <summary>
/// Says what comes of a command: the events to write down, or why not. Pure: the same run, shop, command and moment give
/// the same answer, the run isn't changed, and nothing a person can type makes it throw.
/// </summary>
public static class RunDecider
{
    /// <summary>The longest text that a person can give, in UTF-16 units after cleaning: about two printed pages.</summary>
    public const int LongestText = 4_000;

    /// <summary>Decides.</summary>
    public static Decision Decide(RunState state, ShopState shop, RunCommand command, Moment moment) =>
        DecideOnPractice(state, shop, command, moment, signs: null);

    /// <summary>
    /// Decides on a practice job whose marks are words instead of signatures: a rehearsal signs thousands of times, and a
    /// practice mark is worth nothing either way. On any other job this decides as without it.
    /// </summary>
    /// <param name="state">The run.</param>
    /// <param name="shop">The shop.</param>
    /// <param name="command">What is wanted.</param>
    /// <param name="moment">When and by whom.</param>
    /// <param name="signs">The word that stands for a signature; null: signatures.</param>
    public static Decision DecideOnPractice(
        RunState state,
        ShopState shop,
        RunCommand command,
        Moment moment,
        string? signs
    )
    {
        command = Cleaned(command);
        foreach (string text in Texts(command))
        {
            if (text.Length > LongestText)
            {
                return TooLong(text.Length);
            }
        }

        Deciding on = new(state, shop, moment) { PracticeMark = state.Job is { Practice: true } ? signs : null };
        if (command is RunCommand.OpenJob open)
        {
            return state.Job is null
                ? Deciding.Yes(new RunEvent.JobOpened(open.Header), open.Earlier, open.Linked)
                : Deciding.No("The job is open already.");
        }

        RunMachines machines = RunMachines.For(on);
        if (machines.JobRefuses(command) is { } closed)
        {
            return closed;
        }

        if (!IsPlaceOf(state.Plan, command))
        {
            return Deciding.No("There is no such step or position.");
        }

        return command switch
        {
            RunCommand.Note note => JobDecider.Note(note),
            RunCommand.Hold hold => JobDecider.Hold(hold.Reason),
            RunCommand.TakeUp => Deciding.Yes(new RunEvent.JobTakenUp()),
            RunCommand.HandOver over => JobDecider.HandOver(on, over.To),
            RunCommand.ChooseGauge gauge => JobDecider.ChooseGauge(on, gauge),
            RunCommand.ChooseLimit limit => JobDecider.ChooseLimit(on, limit),
            RunCommand.Report report => JobDecider.Report(on, report),
            RunCommand.LinkHead link => HeadDecider.Link(on, link),
            RunCommand.CompareHeads compare => HeadDecider.Compare(on, compare.Compared),
            _ => AtStep(on, machines, command),
        };
    }

    private static Decision AtStep(Deciding on, RunMachines machines, RunCommand command)
    {
        At at = command switch
        {
            RunCommand.Enter enter => enter.At,
            RunCommand.Correct correct => correct.At,
            RunCommand.LiftToMeasure lift => lift.At,
            RunCommand.EndCut end => end.At,
            RunCommand.TakeWay way => way.At,
            RunCommand.Sign sign => sign.At,
            RunCommand.LeaveOut leave => leave.At,
            RunCommand.TakeBack back => back.At,
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        if (!IsPlace(on.Plan, at))
        {
            return Deciding.No("There is no such step at that position.");
        }

        if (machines.StepRefuses(at, command) is { } shut)
        {
            return shut;
        }

        return command switch
        {
            RunCommand.Enter enter => EntryDecider.Enter(on, at, enter.Text),
            RunCommand.Correct correct => EntryDecider.Correct(
                new Deciding(on.State, on.Shop, on.Moment) { Corrects = true, PracticeMark = on.PracticeMark },
                correct
            ),
            RunCommand.LiftToMeasure => Lift(on, at),
            RunCommand.EndCut when on.StepOf(at).Work is StepWork.Cut => CutDecider.End(on, at),
            RunCommand.TakeWay way => WayDecider.Take(on, way),
            RunCommand.Sign sign when on.StepOf(at).Work is StepWork.Sign work => SignDecider.Sign(
                on,
                at,
                work,
                sign.Mark,
                sign.Beside
            ),
            RunCommand.LeaveOut leave => JobDecider.LeaveOut(on, leave),
            RunCommand.TakeBack back => JobDecider.TakeBack(back),
            _ => Deciding.No($"That can't be done at {on.Plan.NameOf(at)}."),
        };
    }

    // Text is cleaned where it enters, so that what is decided on is what the trail keeps.
    private static RunCommand Cleaned(RunCommand command) =>
        command switch
        {
            RunCommand.Enter c => c with { Text = SafeText.Clean(c.Text) },
            RunCommand.Correct c => c with { Text = SafeText.Clean(c.Text), Reason = SafeText.Clean(c.Reason) },
            RunCommand.TakeWay c => c with { Reason = SafeText.Clean(c.Reason), Mark = Cleaned(c.Mark) },
            RunCommand.Sign c => c with { Mark = Cleaned(c.Mark)!, Beside = Cleaned(c.Beside) },
            RunCommand.TakeBack c => c with { Reason = SafeText.Clean(c.Reason) },
            RunCommand.LeaveOut c => c with { Reason = SafeText.Clean(c.Reason) },
            RunCommand.Note c => c with { Text = SafeText.Clean(c.Text) },
            RunCommand.Hold c => c with { Reason = SafeText.Clean(c.Reason) },
            RunCommand.ChooseLimit c => c with { Reason = SafeText.Clean(c.Reason) },
            RunCommand.CompareHeads c => c with
            {
                Compared = c.Compared with { Reason = SafeText.Clean(c.Compared.Reason).Trim() },
            },
            RunCommand.OpenJob c => c with
            {
                Header = c.Header with
                {
                    Stamp = SafeText.Clean(c.Header.Stamp),
                    Customer = SafeText.Clean(c.Header.Customer),
                    Complaint = SafeText.Clean(c.Header.Complaint),
                    EarlierWork = SafeText.Clean(c.Header.EarlierWork),
                },
            },
            _ => command,
        };

    // The names of people are clean, so that a mark of one of them isn't changed by this.
    private static Mark? Cleaned(Mark? mark) =>
        mark is null
            ? null
            : mark with
            {
                Person = SafeText.Clean(mark.Person),
                Name = SafeText.Clean(mark.Name),
                Signature = SafeText.Clean(mark.Signature),
            };

    private static string[] Texts(RunCommand command) =>
        command switch
        {
            RunCommand.Enter c => [c.Text],
            RunCommand.Correct c => [c.Text, c.Reason],
            RunCommand.TakeWay c => [c.Way, c.Reason],
            RunCommand.LeaveOut c => [c.Reason],
            RunCommand.Note c => [c.Text],
            RunCommand.Hold c => [c.Reason],
            RunCommand.HandOver c => [c.To],
            RunCommand.ChooseGauge c => [c.Kind, c.Gauge],
            RunCommand.ChooseLimit c => [c.Characteristic, c.Reason],
            RunCommand.Report c => [c.Change],
            RunCommand.OpenJob { Header: var h } => [h.Stamp, h.Customer, h.Complaint, h.EarlierWork],
            _ => [],
        };

    private static Decision.Refused TooLong(int length) =>
        Deciding.No(
            string.Create(
                System.Globalization.CultureInfo.InvariantCulture,
                $"That is {length} characters; at most {LongestText} are taken at once."
            ),
            "Say it shorter, or in several notes."
        );

    private static Decision Lift(Deciding on, At at) =>
        on.State.Find(at) is { Cut: { Measures: false }, Standing: not StepStanding.Done }
        && on.StepOf(at).Work is StepWork.Cut
            ? Deciding.Yes(new RunEvent.CutterLifted(at))
            : Deciding.No($"There is no cut under way at {on.Plan.NameOf(at)}.");

    private static bool IsPlaceOf(Plan plan, RunCommand command) =>
        command switch
        {
            RunCommand.Note { At: { } at } => IsPlace(plan, at),
            RunCommand.Report report => IsPosition(plan, report.Position),
            RunCommand.ChooseLimit { Position: { } position } => IsPosition(plan, position),
            _ => true,
        };

    private static bool IsPosition(Plan plan, int position) => position >= At.Head && position < plan.Positions.Count;

    private static bool IsPlace(Plan plan, At at) =>
        at.Step >= 0
        && at.Step < plan.Steps.Count
        && IsPosition(plan, at.Position)
        && plan.PositionsOf(plan.StepAt(at.Step)).Contains(at.Position);
}
