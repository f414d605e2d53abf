using System.Collections.Concurrent;
using System.Collections.Frozen;
using ProcRunner.Procedures;

namespace ProcRunner.Runs;

/// <summary>
/// A procedure and a head spec joined, with what can be known of them before any reading: who takes what, what rests
/// on what, how things are named in a trail. Immutable. The two must have passed <c>PlanCheck</c>.
/// </summary>
/// <remarks>
/// Runs in reading order: <see cref="Plan"/> is what doesn't change, <see cref="RunEvent"/> what happened,
/// <see cref="RunState"/> the fold of that, <see cref="Outlook"/> what is open now, <see cref="RunCommand"/> what a person
/// wants, <see cref="RunDecider"/> what comes of it.
/// </remarks>
public sealed class Plan
{
    private readonly Step[] _stepAt;
    private readonly Characteristic[] _characteristicAt;
    private readonly FrozenDictionary<string, int> _characteristics;
    private readonly FrozenDictionary<string, int> _steps;
    private readonly FrozenDictionary<string, int> _positions;
    private readonly FrozenDictionary<string, int[]> _restingCharacteristics;
    private readonly FrozenDictionary<string, int[]> _restingSteps;
    private readonly FrozenDictionary<string, int[]> _readingSteps;
    private readonly FrozenDictionary<string, (int Step, int Value)[]> _readingValues;
    private readonly FrozenDictionary<string, (int Step, int Value)[]> _comparingValues;
    private readonly FrozenDictionary<string, int[]> _deciders;
    private readonly FrozenDictionary<string, int[]> _inspectors;
    private readonly int[][] _takers;
    private readonly int?[] _cutOfZero;
    private readonly int[][] _positionsOf;
    private readonly int[][] _given;
    private readonly MovedName[][] _movedBy;
    private readonly FrozenDictionary<string, PlanLimit?[]> _limits;
    private readonly int[][] _readers;

    // Names stand in formulas, of which there are as many as files hold.
    private readonly ConcurrentDictionary<string, PlanName?> _names = new(StringComparer.Ordinal);
    private readonly int[][] _givers;
    private readonly int[][] _signs;
    private readonly bool[] _forbidden;
    private readonly int[] _kinds;

    /// <summary>Joins the two.</summary>
    public Plan(Procedure procedure, HeadSpec head)
    {
        Procedure = procedure;
        Head = head;
        _stepAt = [.. procedure.Steps];
        _characteristicAt = [.. procedure.Characteristics];
        _characteristics = Indexed(procedure.Characteristics.Select(c => c.Name));
        _steps = Indexed(procedure.Steps.Select(s => s.FullName));
        _positions = Indexed(head.Positions.Select(p => p.Name));
        _positionsOf = [.. procedure.Steps.Select(PositionsFor)];
        _given = [.. procedure.Steps.Select(s => s.Gives.Select(CharacteristicIndex).ToArray())];
        _limits = LimitsByPosition(head);
        _givers = [.. procedure.Characteristics.Select((_, c) => StepsWhere(s => _given[s.Index].Contains(c)))];
        _signs = [.. procedure.Stages.Select((_, i) => StepsWhere(s => s.StageIndex == i && s.Work is StepWork.Sign))];
        Conditions = new Conditions(procedure);
        string[] kinds = [.. head.Positions.Select(p => p.Kind).Distinct()];
        _kinds = [.. head.Positions.Select(p => Array.IndexOf(kinds, p.Kind))];
        _forbidden = [.. procedure.Steps.Select(s => s.IsWork is { } work && head.Forbidden.ContainsKey(work))];
        _restingCharacteristics = Grouped(
            procedure.Characteristics.SelectMany((c, i) => c.RestsOn.Select(on => (on, i)))
        );
        _restingSteps = Grouped(
            procedure.Steps.SelectMany(s =>
                s.RestsOn.Concat(s.Work is StepWork.Zero ? ReadNames.Of(s) : []).Distinct().Select(on => (on, s.Index))
            )
        );
        _readingSteps = Grouped(procedure.Steps.SelectMany(s => ReadNames.Of(s).Select(name => (name, s.Index))));
        _readingValues = Grouped(
            procedure.Steps.SelectMany(s =>
                ReadNames.OfValues(s).Select(read => (read.Name, (s.Index, CharacteristicIndex(read.Value))))
            )
        );
        _comparingValues = Grouped(
            procedure.Steps.SelectMany(s =>
                ReadNames
                    .OfValues(s)
                    .Where(read => read.AcrossPositions)
                    .Select(read => (read.Name, (s.Index, CharacteristicIndex(read.Value))))
            )
        );
        _takers = [.. procedure.Characteristics.Select(TakersOf)];
        _readers = [.. procedure.Characteristics.Select(c => _readingSteps.GetValueOrDefault(c.Name, []))];
        _movedBy = MovedByAll();
        DecidedByPosition =
        [
            .. procedure
                .Steps.Where(s => s is { Work: StepWork.Decide, OfHead: false })
                .Select(s => s.Subject)
                .Distinct(),
        ];
        _deciders = Grouped(procedure.Steps.Where(s => s.Work is StepWork.Decide).Select(s => (s.Subject, s.Index)));
        _inspectors = Grouped(procedure.Steps.Where(s => s.Work is StepWork.Inspect).Select(s => (s.Subject, s.Index)));
        _cutOfZero = new int?[procedure.Steps.Count];
        foreach (Step step in procedure.Steps)
        {
            if (step.Work is StepWork.Cut cut)
            {
                _cutOfZero[cut.ZeroStep] = step.Index;
            }
        }
    }

    /// <summary>The procedure.</summary>
    public Procedure Procedure { get; }

    /// <summary>The head spec.</summary>
    public HeadSpec Head { get; }

    /// <summary>The procedure's steps.</summary>
    public IReadOnlyList<Step> Steps => Procedure.Steps;

    /// <summary>A step by its index.</summary>
    internal Step StepAt(int index) => _stepAt[index];

    /// <summary>A characteristic by its index.</summary>
    internal Characteristic CharacteristicAt(int index) => _characteristicAt[index];

    /// <summary>The head's positions.</summary>
    public IReadOnlyList<Position> Positions => Head.Positions;

    /// <summary>Index of the step that cuts from the zero which this step sets; null for other steps.</summary>
    public int? CutOfZero(int step) => _cutOfZero[step];

    /// <summary>Index of a characteristic.</summary>
    /// <exception cref="KeyNotFoundException">There is none of that name.</exception>
    public int CharacteristicIndex(string name) => _characteristics[name];

    /// <summary>Index of a characteristic, or false.</summary>
    public bool TryCharacteristic(string name, out int index) => _characteristics.TryGetValue(name, out index);

    /// <summary>Index of a step by its full name, or false.</summary>
    public bool TryStep(string fullName, out int index) => _steps.TryGetValue(fullName, out index);

    /// <summary>Index of a position by its name, or false.</summary>
    public bool TryPosition(string name, out int index) => _positions.TryGetValue(name, out index);

    /// <summary>Characteristics whose value rests on a datum or another characteristic.</summary>
    internal ReadOnlySpan<int> CharacteristicsRestingOn(string name) => _restingCharacteristics.GetValueOrDefault(name);

    /// <summary>Steps whose being done rests on a name.</summary>
    internal ReadOnlySpan<int> StepsRestingOn(string name) => _restingSteps.GetValueOrDefault(name);

    /// <summary>Steps that need a name's value before they can be done and don't give it themselves.</summary>
    internal ReadOnlySpan<int> StepsReading(string name) => _readingSteps.GetValueOrDefault(name);

    /// <summary>Values, with the steps that take them, that are worked out or judged from a name.</summary>
    internal ReadOnlySpan<(int Step, int Value)> ValuesReading(string name) => _readingValues.GetValueOrDefault(name);

    /// <summary>Those of them that read the name at other positions too.</summary>
    internal ReadOnlySpan<(int Step, int Value)> ValuesComparing(string name) =>
        _comparingValues.GetValueOrDefault(name);

    /// <summary>True for a step of a stage that records the head as it came.</summary>
    public bool IsAsFound(int step) => Procedure.Stages[Steps[step].StageIndex].AsFound;

    /// <summary>Steps that measure or cut to a characteristic, in order.</summary>
    public IReadOnlyList<int> Takers(int characteristic) => _takers[characteristic];

    /// <summary>Steps that measure or cut to a characteristic, in a form to go through quickly.</summary>
    internal ReadOnlySpan<int> TakersFor(int characteristic) => _takers[characteristic];

    /// <summary>Steps that decide about a subject, in order.</summary>
    public ReadOnlySpan<int> DecidersOf(string subject) => _deciders.GetValueOrDefault(subject);

    /// <summary>Steps that inspect a subject, in order.</summary>
    public ReadOnlySpan<int> InspectorsOf(string subject) => _inspectors.GetValueOrDefault(subject);

    /// <summary>The position's name, or "head".</summary>
    public string PositionName(int position) => position == At.Head ? "head" : Positions[position].Name;

    /// <summary>The position, or null for the head.</summary>
    public Position? PositionOf(int position) => position == At.Head ? null : Positions[position];

    /// <summary>Index of a position's kind among the head's kinds, in the order in which they come; -1 for the head.</summary>
    internal int KindOf(int position) => position == At.Head ? -1 : _kinds[position];

    /// <summary>How a person names a step at a position: <c>seat cut / recession at 3E</c>.</summary>
    public string NameOf(At at) =>
        at.Position == At.Head ? Steps[at.Step].FullName : $"{Steps[at.Step].FullName} at {PositionName(at.Position)}";

    /// <summary>The position indices a step is for.</summary>
    public IReadOnlyList<int> PositionsOf(Step step) => _positionsOf[step.Index];

    /// <summary>The position indices a step is for, in a form to go through quickly.</summary>
    internal ReadOnlySpan<int> PositionsAt(int step) => _positionsOf[step];

    /// <summary>Indices of the characteristics that a step gives values to.</summary>
    internal ReadOnlySpan<int> GivenBy(int step) => _given[step];

    /// <summary>What a step at a position moves, as the procedure declares it.</summary>
    internal IReadOnlyList<MovedName> MovedBy(At at) => _movedBy[(at.Step * (Positions.Count + 1)) + at.Position + 1];

    /// <summary>The head spec's limit of a name at a position or of the head, or null when it has none.</summary>
    internal Limit? LimitAt(string name, int position) => FindLimit(name, position)?.Limit;

    /// <summary>The same with its ends as exact amounts.</summary>
    internal PlanLimit? FindLimit(string name, int position) =>
        _limits.TryGetValue(name, out PlanLimit?[]? everywhere) ? everywhere[position + 1] : null;

    /// <summary>True for a limit that the head spec leaves open somewhere, to be chosen in each run.</summary>
    internal bool IsChosenInRuns(string name) =>
        _limits.TryGetValue(name, out PlanLimit?[]? everywhere)
        && Array.Exists(everywhere, static limit => limit is { Limit.Ask: not null });

    /// <summary>A name that formulas read; null when it means nothing.</summary>
    internal PlanName? NameOf(string text) =>
        _names.GetOrAdd(text, static (name, plan) => PlanName.Of(plan, name), this);

    /// <summary>Steps that give values to a characteristic, in order.</summary>
    internal ReadOnlySpan<int> GiversOf(int characteristic) => _givers[characteristic];

    /// <summary>As <see cref="StepsReading"/>, for a characteristic.</summary>
    internal ReadOnlySpan<int> ReadersOf(int characteristic) => _readers[characteristic];

    /// <summary>Steps that sign a stage, in order.</summary>
    internal ReadOnlySpan<int> SignsOf(int stage) => _signs[stage];

    /// <summary>What is decided for each position by itself.</summary>
    internal string[] DecidedByPosition { get; }

    /// <summary>The conditions on which steps are asked for.</summary>
    internal Conditions Conditions { get; }

    /// <summary>True for work that the head spec forbids.</summary>
    internal bool IsForbidden(int step) => _forbidden[step];

    /// <summary>The positions a move reaches from where it is made; for a thing of the head, the head.</summary>
    public IEnumerable<int> Reached(Move move, int from)
    {
        if (IsOfHead(move.Of))
        {
            return [At.Head];
        }

        return move.Reach switch
        {
            Reach.Here when from != At.Head => [from],
            Reach.Neighbours when from != At.Head => new[] { from - 1, from + 1 }.Where(i =>
                i >= 0 && i < Positions.Count
            ),
            _ => Enumerable.Range(0, Positions.Count),
        };
    }

    /// <summary>True when a datum or characteristic is one of the head.</summary>
    public bool IsOfHead(string name) =>
        TryCharacteristic(name, out int index)
            ? Procedure.Characteristics[index].OfHead
            : Procedure.Datums.FirstOrDefault(d => d.Name == name)?.OfHead ?? true;

    private int[] PositionsFor(Step step) =>
        step.OfHead
            ? [At.Head]
            :
            [
                .. Enumerable
                    .Range(0, Positions.Count)
                    .Where(i => step.Kinds.Count == 0 || step.Kinds.Contains(Positions[i].Kind)),
            ];

    // By step, then by position, the head first.
    private MovedName[][] MovedByAll() =>
        [
            .. Steps.SelectMany(step =>
                Enumerable
                    .Range(At.Head, Positions.Count + 1)
                    .Select(p => PositionsOf(step).Contains(p) ? Staleness.Of(this, step.Moves, p) : [])
            ),
        ];

    private int[] StepsWhere(Func<Step, bool> wanted) => [.. Procedure.Steps.Where(wanted).Select(s => s.Index)];

    // By name, then by position, the head first.
    private static FrozenDictionary<string, PlanLimit?[]> LimitsByPosition(HeadSpec head)
    {
        Dictionary<Limit, PlanLimit> exact = new(ReferenceEqualityComparer.Instance);
        PlanLimit? At(string name, Position? position)
        {
            if (head.LimitOf(name, position) is not { } limit)
            {
                return null;
            }

            if (!exact.TryGetValue(limit, out PlanLimit? known))
            {
                exact[limit] = known = new PlanLimit(
                    limit,
                    LimitFinder.Found(limit.Low, limit.Aim, limit.High, OriginWords.Of(limit.Origin))
                );
            }

            return known;
        }

        return head
            .Limits.Keys.Select(key => key.Name)
            .Distinct(StringComparer.Ordinal)
            .ToFrozenDictionary(
                name => name,
                name => head.Positions.Prepend(null).Select(position => At(name, position)).ToArray(),
                StringComparer.Ordinal
            );
    }

    private int[] TakersOf(Characteristic characteristic) =>
        [
            .. Procedure
                .Steps.Where(s => s.Work is StepWork.Measure or StepWork.Cut)
                .Where(s => s.Gives.Contains(characteristic.Name))
                .Select(s => s.Index),
        ];

    private static FrozenDictionary<string, int> Indexed(IEnumerable<string> names) =>
        names.Select((name, i) => (name, i)).ToFrozenDictionary(p => p.name, p => p.i, StringComparer.Ordinal);

    private static FrozenDictionary<string, T[]> Grouped<T>(IEnumerable<(string On, T Index)> pairs) =>
        pairs
            .GroupBy(p => p.On, p => p.Index, StringComparer.Ordinal)
            .ToFrozenDictionary(g => g.Key, g => g.ToArray(), StringComparer.Ordinal);
}
