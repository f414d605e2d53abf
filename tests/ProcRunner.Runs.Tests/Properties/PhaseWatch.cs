using System.Globalization;
using Stateless.Reflection;

namespace ProcRunner.Runs.Tests.Properties;

/// <summary>Compares the phases of job, stages and steps after each entry with those before it.</summary>
internal sealed class PhaseWatch(Plan plan)
{
    private static readonly HashSet<(object, object)> Steps = Transitions(
        RunMachines.StepMachine(static () => StepPhase.Waiting, static () => true, static () => true).GetInfo()
    );

    private static readonly HashSet<(object, object)> Jobs = Transitions(
        RunMachines.JobMachine(static () => JobStanding.Open).GetInfo()
    );

    private static readonly HashSet<(object, object)> Stages = Transitions(
        RunMachines.StageMachine(static () => StagePhase.Waiting).GetInfo()
    );

    private Dictionary<string, object>? _last;

    public List<string> Wrong { get; } = [];

    public void Look(RunState state)
    {
        Outlook outlook = new(state);
        Dictionary<string, object> now = outlook.All.ToDictionary(
            at => plan.NameOf(at),
            at => (object)RunMachines.PhaseOf(state, outlook, at)
        );
        now["the job"] = state.Standing;
        foreach (Procedures.Stage stage in plan.Procedure.Stages)
        {
            now["stage " + stage.Name] = PhaseOf(state, outlook, stage);
        }

        foreach ((string name, object phase) in now)
        {
            object before = _last?[name] ?? phase;
            HashSet<(object, object)> allowed =
                phase is StepPhase ? Steps
                : phase is JobStanding ? Jobs
                : Stages;
            if (!before.Equals(phase) && !allowed.Contains((before, phase)))
            {
                string entry = state.Sequence.ToString(CultureInfo.InvariantCulture);
                Wrong.Add($"entry {entry}: {name} went from {before} to {phase}");
            }
        }

        _last = now;
    }

    // Waiting until something of it has happened; signed while its last sign-off stands over all of it.
    private StagePhase PhaseOf(RunState state, Outlook outlook, Procedures.Stage stage)
    {
        At[] steps = [.. outlook.All.Where(at => plan.Steps[at.Step].StageIndex == stage.Index)];
        At sign = steps.Last(at => plan.Steps[at.Step].Work is Procedures.StepWork.Sign);
        bool everSigned = state.Find(sign) is { Sequence: > 0 };
        bool whole = steps.All(at => outlook.ViewOf(at) is StepView.Done or StepView.NotHere);
        return !steps.Any(at => state.Find(at) is { Sequence: > 0 }) ? StagePhase.Waiting
            : everSigned && whole ? StagePhase.Signed
            : everSigned ? StagePhase.Recheck
            : StagePhase.UnderWay;
    }

    private static HashSet<(object, object)> Transitions(StateMachineInfo info)
    {
        HashSet<(object, object)> pairs = [];
        foreach (StateInfo state in info.States)
        {
            foreach (FixedTransitionInfo to in state.FixedTransitions)
            {
                pairs.Add((state.UnderlyingState, to.DestinationState.UnderlyingState));
            }

            foreach (DynamicTransitionInfo to in state.DynamicTransitions)
            {
                foreach (DynamicStateInfo one in to.PossibleDestinationStates ?? [])
                {
                    pairs.Add((state.UnderlyingState, Enum.Parse<StepPhase>(one.DestinationState)));
                }
            }
        }

        return pairs;
    }
}
