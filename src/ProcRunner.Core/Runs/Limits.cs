using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>The limits a reading is judged by, worked out for one position at one moment.</summary>
/// <param name="low">Least value that passes, exact, or null.</param>
/// <param name="aim">Value worked to, or null.</param>
/// <param name="high">Greatest value that passes, or null.</param>
/// <param name="origin">Who says so, in words; empty when there is no limit.</param>
internal sealed class Limits(Exact? low, Exact? aim, Exact? high, string origin)
{
    // What was shown last. It follows from this and the unit alone; a plan keeps its limits for all its runs.
    private Shown? _shown;

    public static Limits None { get; } = new(null, null, null, "");

    /// <summary>Least value that passes, exact, or null.</summary>
    public Exact? Low { get; } = low;

    /// <summary>Value worked to, or null.</summary>
    public Exact? Aim { get; } = aim;

    /// <summary>Greatest value that passes, or null.</summary>
    public Exact? High { get; } = high;

    /// <summary>Who says so, in words; empty when there is no limit.</summary>
    public string Origin { get; } = origin;

    /// <summary>The ends in a unit, rounded inward; an end that is no amount of it is left out. Nothing is judged.</summary>
    public Judgement ShownIn(Unit unit) => In(unit).Open;

    /// <summary>The same for a value that is within them.</summary>
    public Judgement MetIn(Unit unit) => In(unit).Met;

    private Shown In(Unit unit)
    {
        if (_shown is { } before && ReferenceEquals(before.Unit, unit))
        {
            return before;
        }

        Judgement open = new(
            Verdict.Unjudged,
            End(Low, unit, Rounding.Up),
            End(Aim, unit, Rounding.Nearest),
            End(High, unit, Rounding.Down),
            Origin,
            ""
        );
        Shown shown = new(unit, open, open with { Verdict = Verdict.In });
        _shown = shown;
        return shown;
    }

    private static Quantity? End(Exact? end, Unit unit, Rounding mode) =>
        end is { } value && value.Dimension == unit.Dimension ? Show.In(value, unit, mode) : null;

    private sealed record Shown(Unit Unit, Judgement Open, Judgement Met);
}
