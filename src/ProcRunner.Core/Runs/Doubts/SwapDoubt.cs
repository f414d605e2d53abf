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
        if (seen.Of.OfHead || seen.Before is not { } before)
        {
            return null;
        }

        Rational by = Seen.By(seen.Of.Doubts.Swapped, seen.Noise);
        Rational own = Seen.Apart(seen.Value, Seen.Base(before.Value));
        if (own <= by)
        {
            return null;
        }

        List<(int Position, Quantity Found, Rational Apart)> fitting = Fitting(seen, by, own);
        if (fitting.Count == 0)
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

    // Nearest first.
    private static List<(int Position, Quantity Found, Rational Apart)> Fitting(Seen seen, Rational by, Rational own)
    {
        List<(int Position, Quantity Found, Rational Apart)> fitting = [];
        for (int position = 0; position < seen.On.Plan.Positions.Count; position++)
        {
            if (position != seen.At.Position && seen.State.Value(seen.Of.Name, position)?.AsFound is { } found)
            {
                Rational apart = Seen.Apart(seen.Value, Seen.Base(found));
                if (apart <= by && apart < own)
                {
                    fitting.Add((position, found, apart));
                }
            }
        }

        return [.. fitting.OrderBy(other => other.Apart)];
    }
}
