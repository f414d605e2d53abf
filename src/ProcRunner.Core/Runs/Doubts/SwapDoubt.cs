using ProcRunner.Quantities;

namespace ProcRunner.Runs.Doubts;

/// <summary>
/// Nothing was done here that could change it, and yet it is off what was measured before and fits what was found at
/// another position: parts changed places, or the reading belongs to another position.
/// </summary>
/// <remarks>Off is by more than two readings of one thing may differ; fits is within that. Common practice, no source.</remarks>
internal static class SwapDoubt
{
    public static Doubt? Of(Seen seen)
    {
        Rational by = Seen.By(seen.Of.Doubts.Swapped, seen.Noise);
        if (seen.Of.OfHead || seen.Before is not { } before)
        {
            return null;
        }

        Rational own = Seen.Apart(seen.Value, Seen.Base(before.Value));
        if (own <= by)
        {
            return null;
        }

        (int Position, Quantity Found, Rational Apart)[] fitting =
        [
            .. Enumerable
                .Range(0, seen.On.Plan.Positions.Count)
                .Where(position => position != seen.At.Position)
                .Select(position => (position, seen.State.Value(seen.Of.Name, position)?.AsFound))
                .Where(other => other.AsFound is not null)
                .Select(other =>
                    (other.position, other.AsFound!.Value, Seen.Apart(seen.Value, Seen.Base(other.AsFound.Value)))
                )
                .Where(other => other.Item3 <= by && other.Item3 < own)
                .OrderBy(other => other.Item3),
        ];
        if (fitting.Length == 0)
        {
            return null;
        }

        string[] names = [.. fitting.Select(f => seen.On.Plan.PositionName(f.Position))];
        return new Doubt(
            $"Read {seen.Reading.Value}; {Seen.NameOf(before)} here {before.Value}, but {fitting[0].Found} as found at {names[0]}"
                + $"{(names.Length > 1 ? $" (and near it at {Seen.Names(names[1..])})" : "")}. Are parts swapped, or is this another position?",
            by
        );
    }
}
