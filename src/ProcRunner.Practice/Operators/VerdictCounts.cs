using ProcRunner.Practice.Bindings;
using ProcRunner.Practice.Gauges;
using ProcRunner.Practice.Heads;
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
        if (
            binding.Plan.TryCharacteristic(reading.Characteristic, out int own) && Limits(reading.Judgement) is { } ends
        )
        {
            bool refused = false;
            bool isOut = false;
            foreach (GaugeReading one in looked)
            {
                refused |= Held.Misses(PracticeHead.InBase(one.Shown), ends.Low, ends.High);
                isOut |= Held.Misses(one.True, ends.Low, ends.High);
            }

            Count(own, refused, isOut);
        }

        foreach (WorkedValue worked in reading.Worked)
        {
            if (
                binding.Plan.TryCharacteristic(worked.Name, out int index)
                && binding.Reading(index) is { } bound
                && Limits(worked.Judgement) is { } limits
            )
            {
                double truth = head[bound.Dimension, taken.At.Position];
                Count(
                    index,
                    Held.Misses(PracticeHead.InBase(worked.Value), limits.Low, limits.High),
                    Held.Misses(truth, limits.Low, limits.High)
                );
            }
        }
    }

    // What is short of its aim is no verdict yet.
    private static (double? Low, double? High)? Limits(Judgement judgement) =>
        judgement is { Low: null, High: null } || judgement.Verdict == Verdict.Short
            ? null
            : (
                judgement.Low is { } least ? PracticeHead.InBase(least) : null,
                judgement.High is { } most ? PracticeHead.InBase(most) : null
            );

    private void Count(int characteristic, bool refused, bool isOut) =>
        _counts[characteristic] += new ReadingCount(
            1,
            refused ? 1 : 0,
            refused && !isOut ? 1 : 0,
            !refused && isOut ? 1 : 0
        );
}
