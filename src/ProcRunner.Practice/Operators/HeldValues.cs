using ProcRunner.Formulas;
using ProcRunner.Practice.Bindings;
using ProcRunner.Practice.Gauges;
using ProcRunner.Practice.Heads;
using ProcRunner.Runs;

namespace ProcRunner.Practice.Operators;

/// <summary>Every judged value at the end of a run, against what is true of the head then.</summary>
/// <param name="session">The head.</param>
/// <param name="state">The run.</param>
/// <param name="taken">The last reading of each characteristic at each position, with the standard uncertainty of its gauge.</param>
internal sealed class HeldValues(
    PracticeSession session,
    RunState state,
    IReadOnlyDictionary<(int Characteristic, int Position), (GaugeReading[] Readings, double Standard)> taken
)
{
    // The readings behind the value in hand, each with how much the value hangs on it.
    private readonly List<(int Characteristic, double Weight)> _inputs = [];

    // What was found already: a value that others are worked out from is come upon once for each of them.
    private readonly Dictionary<(Formula Formula, int Position, int Input), double> _found = [];

    // A value may be worked out from others that are worked out; procedures go no deeper than this.
    private const int Deepest = 4;

    private Plan Plan => state.Plan;

    private Binding Binding => session.Binding;

    /// <summary>The values, place by place.</summary>
    public IReadOnlyList<Held> All()
    {
        List<Held> all = new(Judged().Sum(j => Math.Max(1, j.Value.Places.Count)));
        foreach ((int characteristic, int position, BoundDimension bound, ValueRecord value) in Judged())
        {
            Add(all, characteristic, position, bound, value);
        }

        return all;
    }

    private IEnumerable<(int Characteristic, int Position, BoundDimension Bound, ValueRecord Value)> Judged()
    {
        for (int c = 0; c < Plan.Procedure.Characteristics.Count; c++)
        {
            if (Binding.Reading(c) is not { } bound)
            {
                continue;
            }

            bool ofHead = Plan.Procedure.Characteristics[c].OfHead;
            for (int p = ofHead ? At.Head : 0; p < (ofHead ? 0 : Plan.Positions.Count); p++)
            {
                if (state.Value(c, p) is { Judgement: { Low: not null } or { High: not null } } value)
                {
                    yield return (c, p, bound, value);
                }
            }
        }
    }

    private void Add(List<Held> all, int c, int p, BoundDimension bound, ValueRecord value)
    {
        IReadOnlyList<int> places = PlacesOf(bound, value.Places);
        _inputs.Clear();
        AddInputs(c, p, 1, Deepest);
        if (IsAnyTwice())
        {
            _inputs.Clear();
            AddTogether(c, p, 1, Deepest);
        }

        double squares = 0;
        bool moved = false;
        bool slipped = false;
        foreach ((int characteristic, double weight) in _inputs)
        {
            (GaugeReading[] readings, double own) = taken[(characteristic, p)];
            squares += Square(weight * own);
            moved |= HasMoved(characteristic, p);
            slipped |= Array.Exists(readings, static r => r.IsSlip);
        }

        double standard = Math.Sqrt(squares);
        bool conceded = state.Find(new At(value.ByStep, p)) is { Conceded: true };
        double? low = value.Judgement.Low is { } least ? PracticeHead.InBase(least) : null;
        double? high = value.Judgement.High is { } most ? PracticeHead.InBase(most) : null;
        for (int i = 0; i < Math.Max(1, value.Places.Count); i++)
        {
            all.Add(
                new Held(
                    c,
                    p,
                    value.Places.Count > 1 ? value.Places[i].Place : "",
                    PracticeHead.InBase(value.Places.Count > 0 ? value.Places[i].Value : value.Value),
                    session.Head[bound.Dimension, p, places[Math.Min(i, places.Count - 1)]],
                    low,
                    high,
                    standard,
                    moved,
                    slipped,
                    conceded
                )
            );
        }
    }

    // Adds the readings behind a value, each with how much the value hangs on it (JCGM 100:2008, 5.1.3). Of readings of the value's
    // own kind one counts at most once, and two places of one reading both: so it is of sums, differences and the larger of two.
    private void AddInputs(int c, int p, double weight, int deep)
    {
        if (taken.ContainsKey((c, p)))
        {
            _inputs.Add((c, weight));
            return;
        }

        if (deep == 0 || state.Value(c, p) is not { } value || Binding.WorkingOf(value.ByStep, c) is not { } working)
        {
            return;
        }

        foreach ((int input, double places) in working.Inputs)
        {
            double own = SameKind(c, input) ? places : Math.Abs(HangsOn(working.Formula, p, input));
            AddInputs(input, p, weight * own, deep - 1);
        }
    }

    // The same where one reading counts by two ways, as a load that a spring's rate hangs on too: what it counts for is added up with
    // its sign before it is squared (JCGM 100:2008, 5.2.2, for inputs that go together wholly).
    private void AddTogether(int c, int p, double weight, int deep)
    {
        if (taken.ContainsKey((c, p)))
        {
            int known = _inputs.FindIndex(i => i.Characteristic == c);
            double before = known < 0 ? 0 : _inputs[known].Weight;
            _inputs.RemoveAll(i => i.Characteristic == c);
            _inputs.Add((c, before + weight));
            return;
        }

        if (deep == 0 || state.Value(c, p) is not { } value || Binding.WorkingOf(value.ByStep, c) is not { } working)
        {
            return;
        }

        foreach ((int input, _) in working.Inputs)
        {
            AddTogether(input, p, weight * HangsOn(working.Formula, p, input), deep - 1);
        }
    }

    private double HangsOn(Formula formula, int position, int input)
    {
        if (!_found.TryGetValue((formula, position, input), out double found))
        {
            found = Sensitivity.Of(state, formula, position, input) ?? 0;
            _found[(formula, position, input)] = found;
        }

        return found;
    }

    private bool IsAnyTwice()
    {
        for (int i = 1; i < _inputs.Count; i++)
        {
            int characteristic = _inputs[i].Characteristic;
            if (_inputs.FindIndex(0, i, one => one.Characteristic == characteristic) >= 0)
            {
                return true;
            }
        }

        return false;
    }

    private bool SameKind(int one, int other) =>
        Plan.Procedure.Characteristics[one].Dimension == Plan.Procedure.Characteristics[other].Dimension;

    private bool HasMoved(int characteristic, int position)
    {
        BoundDimension bound = Binding.Reading(characteristic)!;
        GaugeReading[] readings = taken[(characteristic, position)].Readings;
        IReadOnlyList<int> places = PlacesOf(bound, state.Value(characteristic, position)?.Places ?? []);
        for (int i = 0; i < Math.Min(readings.Length, places.Count); i++)
        {
            if (Math.Abs(session.Head[bound.Dimension, position, places[i]] - readings[i].True) > 1e-6)
            {
                return true;
            }
        }

        return false;
    }

    private static IReadOnlyList<int> PlacesOf(BoundDimension bound, IReadOnlyList<PlaceValue> named) =>
        bound.PlacesOf(named.Count > 1 ? [.. named.Select(v => v.Place)] : []);

    private static double Square(double value) => value * value;
}
