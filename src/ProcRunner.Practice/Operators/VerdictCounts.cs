using ProcRunner.Practice.Bindings;
using ProcRunner.Practice.Gauges;
using ProcRunner.Practice.Heads;
using ProcRunner.Quantities;
using ProcRunner.Runs;

namespace ProcRunner.Practice.Operators;

/// <summary>Holds each verdict by limits against what is true at that moment, reading by reading and value by value.</summary>
internal sealed class VerdictCounts(Binding binding)
{
    private readonly ReadingCount[] _counts = new ReadingCount[binding.Plan.Procedure.Characteristics.Count];

    /// <summary>By index of the characteristic.</summary>
    public IReadOnlyList<ReadingCount> All => _counts;

    /// <summary>Takes in a reading that was just taken, before anything more happens to the head.</summary>
    public void Add(PracticeHead head, RunEvent.ReadingTaken taken, GaugeReading[] looked)
    {
        TakenReading reading = taken.Reading;
        if (binding.Plan.TryCharacteristic(reading.Characteristic, out int own))
        {
            Add(own, reading.Judgement, looked.Select(r => (Exact.Of(r.Shown).Value.ToDouble(), r.True)));
        }

        foreach (WorkedValue worked in reading.Worked)
        {
            if (binding.Plan.TryCharacteristic(worked.Name, out int index) && binding.Reading(index) is { } bound)
            {
                double truth = head[bound.Dimension, taken.At.Position];
                Add(index, worked.Judgement, [(PracticeHead.InBase(worked.Value), truth)]);
            }
        }
    }

    private void Add(int characteristic, Judgement judgement, IEnumerable<(double Shown, double True)> places)
    {
        // What is short of its aim is no verdict yet.
        if (judgement is { Low: null, High: null } || judgement.Verdict == Verdict.Short)
        {
            return;
        }

        double? low = judgement.Low is { } least ? PracticeHead.InBase(least) : null;
        double? high = judgement.High is { } most ? PracticeHead.InBase(most) : null;
        bool refused = false;
        bool isOut = false;
        foreach ((double shown, double truth) in places)
        {
            refused |= Held.Misses(shown, low, high);
            isOut |= Held.Misses(truth, low, high);
        }

        _counts[characteristic] += new ReadingCount(
            1,
            refused ? 1 : 0,
            refused && !isOut ? 1 : 0,
            !refused && isOut ? 1 : 0
        );
    }
}
