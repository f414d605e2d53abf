using ProcRunner.Formulas;
using ProcRunner.Lessons;
using ProcRunner.Practice.Works;
using ProcRunner.Problems;
using ProcRunner.Procedures;
using ProcRunner.Runs;

namespace ProcRunner.Practice.Bindings;

/// <summary>A practice setup bound to a procedure and a head spec: what each reading and step is on the practice head. Immutable.</summary>
public sealed class Binding
{
    /// <summary>What stands before a change's name where a report of it works on the head.</summary>
    internal const string Changed = "changed / ";

    private readonly Dictionary<int, BoundDimension> _readings;
    private readonly Dictionary<int, (Work Work, IReadOnlyList<AimTerm> To)> _works;
    private readonly Dictionary<string, (Work Work, IReadOnlyList<AimTerm> To)> _ways;
    private readonly Dictionary<int, BoundFinding> _findings;
    private readonly Dictionary<
        (int Step, int Characteristic),
        (Formula Formula, (int Of, double Weight)[] Inputs)
    > _workings = [];

    internal Binding(
        Plan plan,
        PracticeSetup setup,
        Dictionary<int, BoundDimension> readings,
        Dictionary<int, (Work, IReadOnlyList<AimTerm>)> works,
        Dictionary<string, (Work, IReadOnlyList<AimTerm>)> ways,
        Dictionary<int, BoundFinding> findings
    )
    {
        (Plan, Setup, _readings, _works, _ways, _findings) = (plan, setup, readings, works, ways, findings);
        foreach (Step step in plan.Steps)
        {
            foreach (WorkOut worked in step.Taking?.WorksOut ?? [])
            {
                _workings[(step.Index, plan.CharacteristicIndex(worked.Name))] = (worked.Formula, InputsOf(worked));
            }
        }
    }

    /// <summary>The procedure on its head.</summary>
    public Plan Plan { get; }

    /// <summary>The setup.</summary>
    public PracticeSetup Setup { get; }

    /// <summary>Binds a setup, or says everything that doesn't fit: an unknown name, a reading or a cut that is nothing on the head.</summary>
    public static (Binding? Binding, IReadOnlyList<Problem> Problems) Of(Plan plan, PracticeSetup setup)
    {
        Binder binder = new(plan, setup);
        Binding binding = binder.Bind();
        return binder.Problems.Count == 0 ? (binding, []) : (null, binder.Problems);
    }

    /// <summary>The same binding with another setup of the same names: other gauges, other heads.</summary>
    public Binding With(PracticeSetup setup) => new(Plan, setup, _readings, _works, _ways, _findings);

    /// <summary>What a characteristic is on the head, or null when it is bound to nothing.</summary>
    public BoundDimension? Reading(int characteristic) => _readings.GetValueOrDefault(characteristic);

    /// <summary>What a characteristic is on the head, by name; null when it is bound to nothing.</summary>
    public BoundDimension? Reading(string characteristic) =>
        Plan.TryCharacteristic(characteristic, out int index) ? Reading(index) : null;

    /// <summary>What is judged by limits somewhere in the procedure and is nothing of the practice head, so that nobody knows what is true of it.</summary>
    public IReadOnlyList<string> Unheld =>
        [
            .. Plan
                .Steps.SelectMany(s => s.Taking is { } taking ? Judged(taking) : [])
                .Distinct(StringComparer.Ordinal)
                .Where(name => Reading(name) is null),
        ];

    private static IEnumerable<string> Judged(Taking taking) =>
        taking
            .WorksOut.Select(w => (w.Window, w.Name))
            .Prepend((taking.Window, taking.Characteristic))
            .Where(one => one.Window is not Window.None)
            .Select(one => one.Item2);

    /// <summary>
    /// How a step works a value out, and from which; null for a value that it reads. Beside each the weight that it has in sums,
    /// differences and the larger of several: 1, and the root of 2 where two places of one reading are held against each other,
    /// each with an error of its own (JCGM 100:2008, 5.1.2).
    /// </summary>
    internal (Formula Formula, IReadOnlyList<(int Of, double Weight)> Inputs)? WorkingOf(
        int step,
        int characteristic
    ) => _workings.TryGetValue((step, characteristic), out (Formula, (int, double)[]) working) ? working : null;

    /// <summary>How an inspection is found on the head; null: always good.</summary>
    public BoundFinding? Finding(int step) => _findings.GetValueOrDefault(step);

    private (int Of, double Weight)[] InputsOf(WorkOut worked) =>
        [
            .. worked
                .Formula.Names.Select(n => n.Split('.', 2))
                .Select(n =>
                    (Of: Plan.TryCharacteristic(n[0], out int index) ? index : -1, Part: n.Length > 1 ? n[1] : "")
                )
                .Where(n => n.Of >= 0)
                .GroupBy(n => n.Of)
                .Select(n => (n.Key, IsBetweenPlaces(n.Key, [.. n.Select(one => one.Part)]) ? Math.Sqrt(2) : 1)),
        ];

    private bool IsBetweenPlaces(int characteristic, IReadOnlyCollection<string> parts) =>
        parts.Contains("spread")
        || parts.Distinct().Count(Plan.Procedure.Characteristics[characteristic].Places.Contains) > 1;

    internal (Work Work, IReadOnlyList<AimTerm> To)? WorkOf(int step) =>
        _works.TryGetValue(step, out (Work, IReadOnlyList<AimTerm>) work) ? work : null;

    /// <summary>What is done when a change is reported; null: nothing.</summary>
    internal Work? WorkOfChange(string change) =>
        _ways.TryGetValue(Changed + change, out (Work Work, IReadOnlyList<AimTerm> To) bound) ? bound.Work : null;

    internal (Work Work, IReadOnlyList<AimTerm> To)? WayOf(int step, string way) =>
        _ways.TryGetValue($"{Plan.Steps[step].FullName} / {way}", out (Work, IReadOnlyList<AimTerm>) here) ? here
        : _ways.TryGetValue(way, out (Work, IReadOnlyList<AimTerm>) work) ? work
        : null;
}
