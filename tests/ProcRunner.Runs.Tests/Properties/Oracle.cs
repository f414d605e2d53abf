using System.Globalization;
using ProcRunner.Procedures;

namespace ProcRunner.Runs.Tests.Properties;

/// <summary>
/// Judges a trail of <see cref="SmallWork"/> by its events alone, with nothing of the program's own view of what is open:
/// what has been done, what has gone stale since, what a signature stands over.
/// </summary>
internal sealed class Oracle(Plan plan)
{
    private readonly HashSet<At> _done = [];
    private readonly HashSet<At> _conceded = [];
    private readonly HashSet<At> _leftOut = [];
    private readonly HashSet<At> _staleSteps = [];
    private readonly HashSet<(string Name, int Position)> _staleValues = [];
    private readonly Dictionary<(string Name, int Position), (int Step, Verdict Verdict, long Entry)> _values = [];
    private readonly Dictionary<At, long> _lastResult = [];
    private readonly Dictionary<int, long> _signed = [];
    private readonly Dictionary<int, string> _guide = [];
    private bool _skimPlanned;
    private long _entry;
    private At? _corrected;

    /// <summary>What is wrong with the trail so far, line by line.</summary>
    public List<string> Wrong { get; } = [];

    public bool Released { get; private set; }

    public void Take(IReadOnlyList<RunEvent> events)
    {
        _entry++;
        _corrected = null;
        foreach (RunEvent happened in events)
        {
            Take(happened);
        }
    }

    private void Take(RunEvent happened)
    {
        switch (happened)
        {
            case RunEvent.EntryCorrected corrected:
                _corrected = corrected.At;
                break;
            case RunEvent.ReadingTaken taken:
                Take(taken.At, taken.Reading);
                break;
            case RunEvent.FindingNoted finding:
                Result(finding.At, finding.Good);
                break;
            case RunEvent.ChoiceMade choice:
                _guide[choice.At.Position] = choice.Choice;
                Result(choice.At, done: true);
                break;
            case RunEvent.StepDone done:
                Result(done.At, done: true);
                break;
            case RunEvent.PartFitted fitted:
                Result(fitted.At, done: true);
                break;
            case RunEvent.ZeroSet zero:
                Result(zero.At, done: true);
                break;
            case RunEvent.PassCut pass:
                Result(pass.At, done: false);
                break;
            case RunEvent.CutEnded ended:
                Ended(ended.At);
                break;
            case RunEvent.LeftOut left:
                Result(left.At, done: true);
                _leftOut.Add(left.At);
                break;
            case RunEvent.Conceded conceded:
                bool stale = _staleSteps.Contains(conceded.At);
                Result(conceded.At, done: true);
                _conceded.Add(conceded.At);
                _ = stale && _staleSteps.Add(conceded.At);
                break;
            case RunEvent.WayTaken { Kind: WayKind.Again } again:
                _done.Remove(again.At);
                break;
            case RunEvent.Reopened reopened:
                foreach (At at in reopened.Items)
                {
                    _done.Remove(at);
                    _leftOut.Remove(at);
                    _staleSteps.Remove(at);
                }

                break;
            case RunEvent.WentStale wentStale:
                Stale(wentStale.Items);
                break;
            case RunEvent.SignedOff signed:
                Signed(signed.At);
                break;
            case RunEvent.JobReleased released:
                Release(released.At);
                break;
            default:
                break;
        }
    }

    private void Take(At at, TakenReading reading)
    {
        bool good =
            reading.Judgement.Verdict != Verdict.Out && reading.Worked.All(w => w.Judgement.Verdict != Verdict.Out);
        bool unfinished = reading.Judgement.Verdict == Verdict.Short || plan.Steps[at.Step].Work is StepWork.Zero;
        Result(at, good && !unfinished);
        Value(at, reading.Characteristic, reading.Judgement.Verdict);
        foreach (WorkedValue worked in reading.Worked)
        {
            Value(at, worked.Name, worked.Judgement.Verdict);
        }

        if (reading.Characteristic == "planned skim")
        {
            _skimPlanned = reading.Value.Value > 0;
        }
    }

    private void Value(At at, string name, Verdict verdict)
    {
        (string, int) key = (name, at.Position);
        bool overtaken = _corrected == at && _values.TryGetValue(key, out var before) && before.Step != at.Step;
        if (!overtaken)
        {
            _values[key] = (at.Step, verdict, _entry);
            _staleValues.Remove(key);
        }
    }

    private void Result(At at, bool done)
    {
        _ = done ? _done.Add(at) : _done.Remove(at);
        _conceded.Remove(at);
        _leftOut.Remove(at);
        _staleSteps.Remove(at);
        _lastResult[at] = _entry;
    }

    private void Ended(At at)
    {
        Result(at, done: true);
        foreach (string name in plan.Steps[at.Step].Gives)
        {
            if (_values[(name, at.Position)] is { Verdict: Verdict.Short } value && value.Step == at.Step)
            {
                _values[(name, at.Position)] = value with { Verdict = Verdict.In };
            }
        }
    }

    private void Stale(IReadOnlyList<StaleItem> items)
    {
        foreach (StaleItem item in items)
        {
            _ =
                item.Characteristic >= 0
                    ? _staleValues.Add((plan.Procedure.Characteristics[item.Characteristic].Name, item.Position))
                    : _staleSteps.Add(new At(item.Step, item.Position));
        }
    }

    // The procedure's own conditions, written out by hand.
    private bool IsAsked(Step step, int position) =>
        step.Name switch
        {
            "new guide" or "size the guide" => _guide.GetValueOrDefault(position) == "replace",
            "skim the deck" => _skimPlanned,
            "lap the seat" => false,
            _ => true,
        };

    private IEnumerable<At> Asked(Func<Step, bool> which) =>
        from step in plan.Steps
        where which(step)
        from position in plan.PositionsOf(step)
        where IsAsked(step, position)
        select new At(step.Index, position);

    private void Signed(At sign)
    {
        Step step = plan.Steps[sign.Step];
        string what = step.FullName;
        foreach (At at in Asked(s => s.Index < sign.Step && s.Work is not StepWork.Sign))
        {
            Step covered = plan.Steps[at.Step];
            bool open = !_done.Contains(at) && !(covered.Work is StepWork.Zero && ZeroServed(covered, at));
            Demand(!open, $"{what} was signed while {plan.NameOf(at)} was open");
            bool counts = covered.StageIndex == step.StageIndex && !plan.Procedure.Stages[step.StageIndex].AsFound;
            if (counts && !_leftOut.Contains(at))
            {
                Demand(!IsStale(at), $"{what} was signed while {plan.NameOf(at)} was stale");
            }
        }

        _signed[sign.Step] = _entry;
        _done.Add(sign);
    }

    // A zero is only there for its cut.
    private bool ZeroServed(Step zero, At at) => _done.Contains(at with { Step = plan.CutOfZero(zero.Index)!.Value });

    private bool IsStale(At at)
    {
        Step step = plan.Steps[at.Step];
        return step.Work is not StepWork.Zero
            && (_staleSteps.Contains(at) || step.Gives.Any(name => _staleValues.Contains((name, at.Position))));
    }

    private void Release(At at)
    {
        Released = true;
        Signed(at);
        foreach (At other in Asked(s => s.Work is not StepWork.Sign))
        {
            Step step = plan.Steps[other.Step];
            string name = plan.NameOf(other);
            bool asFound = plan.Procedure.Stages[step.StageIndex].AsFound;
            Demand(asFound || _leftOut.Contains(other) || !IsStale(other), $"released while {name} was stale");
            Demand(
                IsCovered(step, _lastResult.GetValueOrDefault(other)),
                $"released while {name} stood under no sign-off"
            );
            foreach (string given in asFound ? [] : step.Gives)
            {
                (int by, Verdict verdict, long entry) = _values[(given, other.Position)];
                bool conceded = _conceded.Contains(other with { Step = by });
                Demand(
                    conceded || verdict is Verdict.In or Verdict.Unjudged,
                    $"released with {given} at {name} {verdict}"
                );
                Demand(IsCovered(plan.Steps[by], entry), $"released while {given} at {name} stood under no sign-off");
            }
        }
    }

    private bool IsCovered(Step step, long entry) =>
        _signed.Any(s => s.Value >= entry && s.Key > step.Index && plan.Steps[s.Key].StageIndex == step.StageIndex);

    private void Demand(bool holds, string otherwise)
    {
        if (!holds)
        {
            Wrong.Add(string.Create(CultureInfo.InvariantCulture, $"entry {_entry}: {otherwise}"));
        }
    }
}
