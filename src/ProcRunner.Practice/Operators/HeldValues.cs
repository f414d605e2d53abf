using ProcRunner.Practice.Bindings;
using ProcRunner.Practice.Gauges;
using ProcRunner.Practice.Heads;
using ProcRunner.Quantities;
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
    // A value may be worked out from others that are worked out; procedures go no deeper than this.
    private const int Deepest = 4;

    private Plan Plan => state.Plan;

    private Binding Binding => session.Binding;

    /// <summary>The values, place by place.</summary>
    public IEnumerable<Held> All()
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
                    foreach (Held held in Of(c, p, bound, value))
                    {
                        yield return held;
                    }
                }
            }
        }
    }

    private IEnumerable<Held> Of(int c, int p, BoundDimension bound, ValueRecord value)
    {
        Quantity[] shown = value.Places.Count > 0 ? [.. value.Places.Select(v => v.Value)] : [value.Value];
        IReadOnlyList<int> places = bound.PlacesOf([
            .. value.Places.Count > 1 ? value.Places.Select(v => v.Place) : [],
        ]);
        (int Characteristic, double Weight)[] inputs = [.. Inputs(c, p, 1, Deepest)];
        double standard = Math.Sqrt(inputs.Sum(i => Square(i.Weight * taken[(i.Characteristic, p)].Standard)));
        bool moved = inputs.Any(i => HasMoved(i.Characteristic, p));
        bool slipped = inputs.Any(i => Array.Exists(taken[(i.Characteristic, p)].Readings, r => r.IsSlip));
        bool conceded = state.Find(new At(value.ByStep, p)) is { Conceded: true };
        for (int i = 0; i < shown.Length; i++)
        {
            yield return new Held(
                c,
                p,
                value.Places.Count > 1 ? value.Places[i].Place : "",
                PracticeHead.InBase(shown[i]),
                session.Head[bound.Dimension, p, places[Math.Min(i, places.Count - 1)]],
                value.Judgement.Low is { } low ? PracticeHead.InBase(low) : null,
                value.Judgement.High is { } high ? PracticeHead.InBase(high) : null,
                standard,
                moved,
                slipped,
                conceded
            );
        }
    }

    // The readings behind a value, each with how much the value hangs on it (JCGM 100:2008, 5.1.3). Of readings of the value's own
    // kind one counts at most once: so it is of sums, differences and the larger of two.
    private IEnumerable<(int Characteristic, double Weight)> Inputs(int c, int p, double weight, int deep)
    {
        if (taken.ContainsKey((c, p)))
        {
            yield return (c, weight);
            yield break;
        }

        if (deep == 0 || state.Value(c, p) is not { } value || Binding.WorkingOf(value.ByStep, c) is not { } working)
        {
            yield break;
        }

        foreach (int input in working.Inputs)
        {
            double own = SameKind(c, input) ? 1 : Math.Abs(Sensitivity.Of(state, working.Formula, p, input) ?? 0);
            foreach ((int Characteristic, double Weight) one in Inputs(input, p, weight * own, deep - 1))
            {
                yield return one;
            }
        }
    }

    private bool SameKind(int one, int other) =>
        Plan.Procedure.Characteristics[one].Dimension == Plan.Procedure.Characteristics[other].Dimension;

    private bool HasMoved(int characteristic, int position)
    {
        BoundDimension bound = Binding.Reading(characteristic)!;
        GaugeReading[] readings = taken[(characteristic, position)].Readings;
        IReadOnlyList<PlaceValue> named = state.Value(characteristic, position)?.Places ?? [];
        IReadOnlyList<int> places = bound.PlacesOf([.. named.Count > 1 ? named.Select(v => v.Place) : []]);
        return readings
            .Take(places.Count)
            .Where((r, i) => Math.Abs(session.Head[bound.Dimension, position, places[i]] - r.True) > 1e-6)
            .Any();
    }

    private static double Square(double value) => value * value;
}
