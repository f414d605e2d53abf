using ProcRunner.Quantities;
using ProcRunner.Runs;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>The value that is out of spec in a reading: the one furthest over or under.</summary>
/// <param name="Name">Of what, and at which of its places.</param>
/// <param name="Value">What it is.</param>
/// <param name="Judgement">What it was judged by.</param>
/// <param name="Beyond">By how much and which way; empty where the fault is of another kind.</param>
/// <param name="Working">How it was worked out; empty for what was read.</param>
internal sealed record OutValue(string Name, Quantity Value, Judgement Judgement, string Beyond, string Working = "")
{
    /// <summary>The value; null when nothing is out of limits.</summary>
    public static OutValue? Of(TakenReading reading)
    {
        if (reading.Judgement.Verdict == Verdict.Out)
        {
            OutValue worst = Of(
                reading.Characteristic,
                reading.Places.Count > 0 ? [.. reading.Places.Select(p => p.Value)] : [reading.Value],
                reading.Judgement
            );
            string place = reading.Places.FirstOrDefault(p => p.Value == worst.Value).Place ?? "";
            return reading.Places.Count > 1 ? worst with { Name = $"{worst.Name}, {place}" } : worst;
        }

        return reading.Worked.FirstOrDefault(w => w.Judgement.Verdict == Verdict.Out) is { } worked
            ? Of(worked.Name, [worked.Value], worked.Judgement) with
            {
                Working = worked.Working,
            }
            : null;
    }

    private static OutValue Of(string name, Quantity[] values, Judgement judgement)
    {
        Quantity most = values.MaxBy(Exact.Of);
        Quantity least = values.MinBy(Exact.Of);
        if (judgement.High is { } high && most.CompareTo(high) > 0)
        {
            return new OutValue(name, most, judgement, Difference(most, high, "over high"));
        }

        return judgement.Low is { } low && least.CompareTo(low) < 0
            ? new OutValue(name, least, judgement, Difference(low, least, "under low"))
            : new OutValue(name, most, judgement, "");
    }

    private static string Difference(Quantity more, Quantity less, string way)
    {
        Exact by = new(Exact.Of(more).Value - Exact.Of(less).Value, more.Dimension);
        return $"{way} by {Show.In(by, less.Unit)}";
    }
}
