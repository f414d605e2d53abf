using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Runs.Doubts;

/// <summary>
/// Against wear: a stem that got larger or a bore that got smaller since it was last measured, with nothing done to it; or,
/// as the head came, a worn part that is over the size it has when new.
/// </summary>
/// <remarks>By more than two readings of one thing may differ. Common practice, no source.</remarks>
internal static class WearDoubt
{
    public static Doubt? Of(Seen seen)
    {
        if (seen.Of.Wears == Wear.NotSaid)
        {
            return null;
        }

        bool larger = seen.Of.Wears == Wear.Larger;
        Rational by = Seen.By(seen.Of.Doubts.AgainstWear, seen.Noise);
        return seen.Before is { } before
            ? Against(seen, larger, by, Seen.Base(before.Value), $"{Seen.NameOf(before)},")
            : OfNew(seen, larger, by);
    }

    // Where it is judged by the very limit, it is refused and needs no question.
    private static Doubt? OfNew(Seen seen, bool larger, Rational by)
    {
        (Quantity? low, _, Quantity? high) = LimitFinder.Figures(seen.State, seen.Of.Name, seen.At.Position);
        return
            seen.On.Plan.IsAsFound(seen.At.Step)
            && seen.Reading.Judgement.Verdict != Verdict.Out
            && (larger ? low : high) is { } end
            && end.Dimension == seen.Of.Dimension
            ? Against(seen, larger, by, Seen.Base(end), larger ? "the least it has new," : "the most it has new,")
            : null;
    }

    private static Doubt? Against(Seen seen, bool larger, Rational by, Rational from, string name)
    {
        Rational over = larger ? from - seen.Value : seen.Value - from;
        return over > by
            ? new Doubt(
                $"Read {seen.Reading.Value}; {seen.Text(over)} {(larger ? "less" : "more")} than {name} {seen.Text(from)}. Wear makes it {(larger ? "larger" : "smaller")}, never {(larger ? "smaller" : "larger")}.",
                by
            )
            : null;
    }
}
