using ProcRunner.Quantities;

namespace ProcRunner.Runs.Doubts;

/// <summary>
/// A reading about one turn of the gauge's dial off what the readout gives, off the other places of the same reading, off
/// what was measured here before, or off its limits.
/// </summary>
/// <remarks>
/// "About" is a quarter of a turn: nearer the half, a reading is as near to the right turn as to the next. Common
/// practice, no source.
/// </remarks>
internal static class TurnDoubt
{
    private static readonly Rational Quarter = Rational.FromRatio(1, 4);

    public static Doubt? Of(Seen seen)
    {
        if (TurningOf(seen) is not { } turning)
        {
            return null;
        }

        if (turning.OfPlaces() is { } places)
        {
            return places;
        }

        // What is nearest in kind says what is to be expected; where it agrees, what is further off has no say.
        return seen switch
        {
            { Predicted: { } predicted } => turning.Off(predicted.Value, "the readout gives,"),
            { Before: { } before } when Seen.Apart(seen.Value, Seen.Base(before.Value)) <= turning.About => null,
            { Before: { } before } => turning.Off(Seen.Base(before.Value), $"{Seen.NameOf(before)},")
                ?? turning.OfLimits(),
            _ => turning.OfLimits(),
        };
    }

    /// <summary>The same of the last place alone, when those before it are all that is known.</summary>
    public static Doubt? OfLastPlace(Seen seen) => TurningOf(seen)?.OfPlace(seen.Reading.Places.Count - 1);

    private static Turning? TurningOf(Seen seen)
    {
        if (seen.Gauge is not { Turn: { Value: > 0 } turn } || turn.Dimension != seen.Of.Dimension)
        {
            return null;
        }

        Rational one = Seen.Base(turn);
        return new Turning(seen, one, seen.Of.Doubts.OneTurn.By is { } by ? Seen.Base(by) : one * Quarter);
    }

    private sealed class Turning(Seen seen, Rational one, Rational about)
    {
        public Rational About => about;

        public Doubt? Off(Rational expected, string name) =>
            IsTurnOff(seen.Value, expected)
                ? new Doubt(
                    $"Read {seen.Reading.Value}; {By(seen.Value, expected)} than {name} {seen.Text(expected)}.",
                    about
                )
                : null;

        public Doubt? OfPlaces()
        {
            IReadOnlyList<PlaceValue> places = seen.Reading.Places;
            if (places.Count < 2)
            {
                return null;
            }

            Exact[] all = [.. places.Select(p => Exact.Of(p.Value))];
            if (Statistics.Of(Procedures.Statistic.Spread, all).Value < one - about)
            {
                return null;
            }

            return Enumerable.Range(0, all.Length).Select(OfPlace).FirstOrDefault(doubt => doubt is not null);
        }

        public Doubt? OfPlace(int at)
        {
            IReadOnlyList<PlaceValue> places = seen.Reading.Places;
            Exact[] others = [.. places.Where((_, i) => i != at).Select(p => Exact.Of(p.Value))];
            if (others.Length == 0)
            {
                return null;
            }

            Rational middle = Statistics.Of(Procedures.Statistic.Median, others).Value;
            Rational here = Seen.Base(places[at].Value);
            string rest = others.Length == 1 ? "the other place" : "the other places";
            return IsTurnOff(here, middle) && others.All(o => Seen.Apart(o.Value, middle) <= about)
                ? new Doubt(
                    $"Read {places[at].Value} at {places[at].Place}; {By(here, middle)} than {seen.Text(middle)} at {rest}.",
                    about
                )
                : null;
        }

        /// <summary>Out of its limits, and one turn more or less would be in them and near their aim.</summary>
        public Doubt? OfLimits()
        {
            (Rational? Low, Rational? Aim, Rational? High) ends = Ends();
            if (ends.Aim is not { } aim || IsWithin(seen.Value, ends.Low, ends.High))
            {
                return null;
            }

            bool more = seen.Value > aim;
            Rational meant = more ? seen.Value - one : seen.Value + one;
            return IsWithin(meant, ends.Low, ends.High) && Seen.Apart(meant, aim) <= about
                ? new Doubt(
                    $"Read {seen.Reading.Value}; one turn of gauge {seen.Gauge!.Id} ({seen.Gauge.Turn}) {(more ? "less" : "more")} would be {seen.Text(meant)}, within its limits.",
                    about
                )
                : null;
        }

        // What it is judged by; as the head came, when it is only recorded, what the head spec says of it.
        private (Rational? Low, Rational? Aim, Rational? High) Ends()
        {
            (Rational? low, Rational? aim, Rational? high) = (
                seen.Limits.Low?.Value,
                seen.Limits.Aim?.Value,
                seen.Limits.High?.Value
            );
            if (low is null && high is null && seen.On.Plan.IsAsFound(seen.At.Step))
            {
                (Quantity? l, Quantity? a, Quantity? h) = LimitFinder.Figures(
                    seen.State,
                    seen.Of.Name,
                    seen.At.Position
                );
                (low, aim, high) = (Amount(l), Amount(a), Amount(h));
            }

            // A runout, a flatness: it has a high limit alone and can't be below nothing.
            low ??= high is { Sign: > 0 } ? Rational.Zero : null;
            aim ??= low is { } from && high is { } to ? (from + to) / Rational.FromInteger(2) : null;
            return (low, aim, high);
        }

        private bool IsTurnOff(Rational value, Rational expected) =>
            Seen.Apart(Seen.Apart(value, expected), one) <= about;

        private string By(Rational value, Rational expected)
        {
            Rational apart = Seen.Apart(value, expected);
            string turns =
                apart == one
                    ? $"one turn of gauge {seen.Gauge!.Id}"
                    : $"about one turn of gauge {seen.Gauge!.Id}, {seen.Gauge.Turn}";
            return $"{seen.Text(apart)} ({turns}) {(value > expected ? "more" : "less")}";
        }

        private Rational? Amount(Quantity? end) =>
            end is { } value && value.Dimension == seen.Of.Dimension ? Seen.Base(value) : null;

        private static bool IsWithin(Rational value, Rational? low, Rational? high) =>
            !(low is { } from && value < from) && !(high is { } to && value > to);
    }
}
