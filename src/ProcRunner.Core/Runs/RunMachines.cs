using Stateless;
using Stateless.Reflection;

namespace ProcRunner.Runs;

/// <summary>
/// The state machines of job, stage and step. They hold no state of their own: the run is the state, and they say what may
/// be tried in it. Their guards' descriptions are what the operator reads when something is refused, and their diagrams
/// in docs/state-machines.md are drawn from them.
/// </summary>
public sealed class RunMachines
{
    // Making the machines costs more than asking them, and they hold no state: one set for each thread, asked in turn.
    [ThreadStatic]
    private static RunMachines? _ofThread;

    private Deciding _on;
    private readonly StateMachine<StepPhase, StepTrigger> _step;
    private readonly StateMachine<JobStanding, JobTrigger> _job;
    private readonly Dictionary<(JobStanding, JobTrigger), bool> _jobAllows = [];
    private readonly Dictionary<(StepPhase, StepTrigger, bool IsOpen, bool IsOut), bool> _stepAllows = [];
    private At _at;

    private RunMachines(Deciding on)
    {
        _on = on;
        _step = StepMachine(() => PhaseOf(_on, _at), IsOpen, IsOut);
        _job = JobMachine(() => _on.State.Standing);
    }

    /// <summary>The machines, about to be asked for one decision.</summary>
    internal static RunMachines For(Deciding on)
    {
        RunMachines machines = _ofThread ??= new RunMachines(on);
        machines._on = on;
        return machines;
    }

    /// <summary>A step's machine over a state kept elsewhere.</summary>
    public static StateMachine<StepPhase, StepTrigger> StepMachine(
        Func<StepPhase> phase,
        Func<bool> isOpen,
        Func<bool> isOut
    )
    {
        StateMachine<StepPhase, StepTrigger> machine = new(phase, static _ => { });
        const string Open = "what comes before it is done, and it is asked for here";
        const string OutOfSpec = "it is out of spec";
        DynamicStateInfos ends = To(StepPhase.InHand, StepPhase.Done, StepPhase.Out);
        DynamicStateInfos corrected = To(StepPhase.InHand, StepPhase.Done, StepPhase.Recheck, StepPhase.Out);
        StepPhase End() => StepPhase.Done;
        machine
            .Configure(StepPhase.Waiting)
            .PermitDynamicIf(StepTrigger.Enter, End, isOpen, Open, ends)
            .PermitIf(StepTrigger.Sign, StepPhase.Done, isOpen, Open)
            .PermitIf(StepTrigger.LeaveOut, StepPhase.LeftOut, isOpen, Open)
            .PermitReentry(StepTrigger.Reopen);
        machine
            .Configure(StepPhase.InHand)
            .PermitDynamicIf(StepTrigger.Enter, End, isOpen, Open, ends)
            .PermitDynamicIf(StepTrigger.BreakCut, End, isOpen, Open, To(StepPhase.InHand, StepPhase.Done))
            .PermitDynamic(StepTrigger.Correct, End, possibleDestinationStates: ends)
            .PermitReentry(StepTrigger.GoStale)
            .Permit(StepTrigger.Reopen, StepPhase.Waiting);
        machine
            .Configure(StepPhase.Done)
            .PermitDynamic(StepTrigger.Correct, End, possibleDestinationStates: ends)
            .PermitReentryIf(StepTrigger.Sign, isOpen, Open)
            .Permit(StepTrigger.GoStale, StepPhase.Recheck)
            .Permit(StepTrigger.Reopen, StepPhase.Waiting);
        machine
            .Configure(StepPhase.Recheck)
            .PermitDynamicIf(StepTrigger.Enter, End, isOpen, Open, ends)
            .PermitDynamic(StepTrigger.Correct, End, possibleDestinationStates: corrected)
            .PermitIf(StepTrigger.Sign, StepPhase.Done, isOpen, Open)
            .PermitReentry(StepTrigger.GoStale)
            .Permit(StepTrigger.Reopen, StepPhase.Waiting);
        machine
            .Configure(StepPhase.Out)
            .PermitDynamicIf(
                StepTrigger.TakeWay,
                End,
                isOut,
                OutOfSpec,
                To(StepPhase.Waiting, StepPhase.InHand, StepPhase.Done, StepPhase.Recheck, StepPhase.Out)
            )
            .PermitDynamic(StepTrigger.Correct, End, possibleDestinationStates: corrected)
            .PermitReentry(StepTrigger.GoStale)
            .Permit(StepTrigger.Reopen, StepPhase.Waiting);
        machine
            .Configure(StepPhase.LeftOut)
            .Permit(StepTrigger.TakeBack, StepPhase.Waiting)
            .Permit(StepTrigger.Reopen, StepPhase.Waiting);
        return machine;
    }

    /// <summary>A job's machine over a state kept elsewhere.</summary>
    public static StateMachine<JobStanding, JobTrigger> JobMachine(Func<JobStanding> standing)
    {
        StateMachine<JobStanding, JobTrigger> machine = new(standing, static _ => { });
        machine
            .Configure(JobStanding.Open)
            .PermitReentry(JobTrigger.Work)
            .PermitReentry(JobTrigger.Note)
            .Permit(JobTrigger.Hold, JobStanding.Held)
            .Permit(JobTrigger.Release, JobStanding.Released)
            .Permit(JobTrigger.Scrap, JobStanding.Scrapped);
        machine.Configure(JobStanding.Held).PermitReentry(JobTrigger.Note).Permit(JobTrigger.TakeUp, JobStanding.Open);
        machine.Configure(JobStanding.Released);
        machine.Configure(JobStanding.Scrapped);
        return machine;
    }

    /// <summary>A stage's machine over a state kept elsewhere.</summary>
    public static StateMachine<StagePhase, StageTrigger> StageMachine(Func<StagePhase> phase)
    {
        StateMachine<StagePhase, StageTrigger> machine = new(phase, static _ => { });
        machine.Configure(StagePhase.Waiting).Permit(StageTrigger.Result, StagePhase.UnderWay);
        machine
            .Configure(StagePhase.UnderWay)
            .PermitReentry(StageTrigger.Result)
            .PermitReentry(StageTrigger.GoStale)
            .Permit(StageTrigger.Sign, StagePhase.Signed);
        machine
            .Configure(StagePhase.Signed)
            .PermitReentry(StageTrigger.Sign)
            .Permit(StageTrigger.Result, StagePhase.Recheck)
            .Permit(StageTrigger.GoStale, StagePhase.Recheck);
        machine
            .Configure(StagePhase.Recheck)
            .PermitReentry(StageTrigger.Result)
            .PermitReentry(StageTrigger.GoStale)
            .Permit(StageTrigger.Sign, StagePhase.Signed);
        return machine;
    }

    /// <summary>Where a step stands for its machine.</summary>
    public static StepPhase PhaseOf(RunState state, Outlook outlook, At at) =>
        state.StandingOf(at) switch
        {
            StepStanding.Waiting => StepPhase.Waiting,
            StepStanding.InHand => StepPhase.InHand,
            StepStanding.Out => StepPhase.Out,
            StepStanding.LeftOut => StepPhase.LeftOut,
            _ => outlook.IsRecheck(at) ? StepPhase.Recheck : StepPhase.Done,
        };

    /// <summary>Why the job as a whole doesn't allow a command, or null.</summary>
    internal Decision.Refused? JobRefuses(RunCommand command)
    {
        JobTrigger trigger = command switch
        {
            RunCommand.Note => JobTrigger.Note,
            RunCommand.Hold => JobTrigger.Hold,
            RunCommand.TakeUp => JobTrigger.TakeUp,
            _ => JobTrigger.Work,
        };
        if (_on.State.Job is null)
        {
            return Deciding.No("No job is open here.");
        }

        if (JobAllows(_on.State.Standing, trigger))
        {
            return null;
        }

        return _on.State.Standing switch
        {
            JobStanding.Held => Deciding.No(
                $"The job is on hold: {_on.State.StandingReason}.",
                "Take it up again first: take up"
            ),
            JobStanding.Released => Deciding.No("The job is released; its trail is closed."),
            JobStanding.Scrapped => Deciding.No("The head was scrapped; its trail is closed."),
            _ => Deciding.No("The job is not on hold."),
        };
    }

    // Nothing but the standing guards what may be tried in a job, so that the machine is asked once for each.
    private bool JobAllows(JobStanding standing, JobTrigger trigger)
    {
        if (!_jobAllows.TryGetValue((standing, trigger), out bool allows))
        {
            _jobAllows[(standing, trigger)] = allows = _job.CanFire(trigger);
        }

        return allows;
    }

    /// <summary>Why a step doesn't allow a command, or null.</summary>
    internal Decision.Refused? StepRefuses(At at, RunCommand command)
    {
        _at = at;
        StepTrigger trigger = command switch
        {
            RunCommand.Enter => StepTrigger.Enter,
            RunCommand.Correct => StepTrigger.Correct,
            RunCommand.LiftToMeasure or RunCommand.EndCut => StepTrigger.BreakCut,
            RunCommand.TakeWay => StepTrigger.TakeWay,
            RunCommand.Sign => StepTrigger.Sign,
            RunCommand.TakeBack => StepTrigger.TakeBack,
            _ => StepTrigger.LeaveOut,
        };

        // A cut that was zeroed but not begun may be broken off to measure.
        if (trigger == StepTrigger.BreakCut && _on.State.StandingOf(at) == StepStanding.Waiting)
        {
            trigger = StepTrigger.Enter;
        }

        return StepAllows(trigger) ? null : Refusal(at, trigger);
    }

    // Nothing but these three guards what may be tried at a step, so that the machine is asked once for each.
    private bool StepAllows(StepTrigger trigger)
    {
        (StepPhase, StepTrigger, bool, bool) asked = (PhaseOf(_on, _at), trigger, IsOpen(), IsOut());
        if (!_stepAllows.TryGetValue(asked, out bool allows))
        {
            _stepAllows[asked] = allows = _step.CanFire(trigger);
        }

        return allows;
    }

    private Decision.Refused Refusal(At at, StepTrigger trigger)
    {
        string name = _on.Plan.NameOf(at);
        Asked asked = _on.Outlook.AskedAt(at);
        if (asked == Asked.Forbidden)
        {
            string why = _on.Plan.Head.Forbidden[_on.StepOf(at).IsWork!];
            return Deciding.No($"{name} is forbidden on this head: {why}.");
        }

        if (asked == Asked.NotHere)
        {
            return Deciding.No($"{name} isn't asked for here.");
        }

        if (trigger == StepTrigger.TakeBack)
        {
            return Deciding.No($"{name} wasn't left out, so there is nothing to take back.");
        }

        string waitsFor = _on.Outlook.WaitsFor(at);
        return PhaseOf(_on, at) switch
        {
            StepPhase.Out when trigger is StepTrigger.Enter => Deciding.No(
                $"{name} is out of spec and waits for one of the ways on.",
                [.. WayDecider.Offered(_on.State, at).Select(w => w.Text)]
            ),
            StepPhase.Done when trigger is StepTrigger.Enter => Deciding.No(
                $"{name} is done.",
                "To change it: correct … because …"
            ),
            _ when waitsFor.Length > 0 => Deciding.No($"{name} isn't open: first {waitsFor}."),
            _ => Deciding.No(
                trigger switch
                {
                    StepTrigger.Correct => $"There is nothing to correct at {name}.",
                    StepTrigger.TakeWay => $"Nothing is out of spec at {name}.",
                    StepTrigger.BreakCut => $"There is no cut under way at {name}.",
                    StepTrigger.Sign => $"{name}: there is nothing to sign now.",
                    StepTrigger.LeaveOut => $"{name} is begun or done; it can't be left out any more.",
                    _ => $"{name} isn't open.",
                }
            ),
        };
    }

    private static StepPhase PhaseOf(Deciding on, At at) => PhaseOf(on.State, on.Outlook, at);

    private bool IsOpen() => _on.Outlook.ViewOf(_at) == StepView.Open;

    private bool IsOut() => _on.State.StandingOf(_at) == StepStanding.Out;

    private static DynamicStateInfos To(params ReadOnlySpan<StepPhase> phases)
    {
        DynamicStateInfos infos = [];
        foreach (StepPhase phase in phases)
        {
            infos.Add(phase, "");
        }

        return infos;
    }
}
