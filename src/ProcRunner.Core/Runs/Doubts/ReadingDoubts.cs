using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Runs.Doubts;

/// <summary>
/// Questions about a reading that is clear but hard to believe. It is asked for a second time; a second one that agrees
/// with the first, or that raises no doubt, is taken, and the question isn't asked again.
/// </summary>
internal static class ReadingDoubts
{
    internal const string Again = "Measure again: the same reading twice is taken.";

    /// <summary>What is to be asked about a reading, or null when it is to be taken.</summary>
    /// <param name="seen">The reading.</param>
    /// <param name="parse">Reads what was typed before, for the same field.</param>
    public static RunEvent.EntryQuestioned? Of(Seen seen, Func<string, EntryResult> parse)
    {
        // A place on a temperature scale has no size that wears or turns.
        if (seen.Of.Dimension.OfDifference() != seen.Of.Dimension || Raised(seen) is not { } doubt)
        {
            return null;
        }

        // Whoever measures honestly agrees with himself to within the gauge's own uncertainty, so nobody is asked for ever.
        Rational within = doubt.Within > seen.Noise ? doubt.Within : seen.Noise;
        StepRecord? record = seen.State.Find(seen.At);
        bool answered =
            record?.Doubted is { } asked
            && parse(asked.Typed) is EntryResult.Taken first
            && Agree(seen.Reading.Places, first.Values, within);
        return answered || IsTakenAlready(seen, record, within)
            ? null
            : new RunEvent.EntryQuestioned(seen.At, seen.Reading.Typed, $"{doubt.Why} {Again}", []);
    }

    private static Doubt? Raised(Seen seen)
    {
        DoubtRules rules = seen.Of.Doubts;
        bool cuts = seen.Step.Work is StepWork.Cut;
        return (rules.OneTurn.On ? TurnDoubt.Of(seen) : null)
            ?? (rules.Swapped.On && !cuts ? SwapDoubt.Of(seen) : null)
            ?? (rules.AgainstWear.On && !cuts ? WearDoubt.Of(seen) : null)
            ?? (rules.OddOneOut.On ? OddDoubt.Of(seen) : null);
    }

    // The last reading of this step says the same: it was believed then, or out of limits and is measured again now.
    private static bool IsTakenAlready(Seen seen, StepRecord? record, Rational within) =>
        !seen.On.Corrects
        && record is { Stale: false, Readings: [.., { } last] }
        && last.Characteristic == seen.Reading.Characteristic
        && Agree(seen.Reading.Places, [.. last.Places.Select(p => p.Value)], within);

    private static bool Agree(IReadOnlyList<PlaceValue> second, IReadOnlyList<Quantity> first, Rational within) =>
        second.Count == first.Count
        && second
            .Zip(first)
            .All(pair =>
                pair.First.Value.Dimension == pair.Second.Dimension
                && Seen.Apart(Seen.Base(pair.First.Value), Seen.Base(pair.Second)) <= within
            );
}
