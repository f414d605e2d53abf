namespace ProcRunner.Practice.Rehearsals;

/// <summary>What became of one characteristic over many heads: true values in base units, kept as sums and counts.</summary>
public sealed class Distribution
{
    /// <summary>How many bars a histogram has.</summary>
    public const int Bars = 24;

    private readonly long[] _bars = new long[Bars];
    private readonly Spread _values = new();

    /// <summary>A distribution between two ends.</summary>
    internal Distribution(double? low, double? high, double from, double to) =>
        (Low, High, From, To) = (low, high, from, to);

    /// <summary>Low limit, or null.</summary>
    public double? Low { get; }

    /// <summary>High limit, or null.</summary>
    public double? High { get; }

    /// <summary>Where the first bar begins.</summary>
    public double From { get; }

    /// <summary>Where the last bar ends.</summary>
    public double To { get; }

    /// <summary>How many values.</summary>
    public long Count => _values.Count;

    /// <summary>How many of them are truly out of limits.</summary>
    public long Out { get; private set; }

    /// <summary>Their mean.</summary>
    public double Mean => _values.Mean;

    /// <summary>Their standard deviation; 0 below two values.</summary>
    public double Deviation => _values.Deviation;

    /// <summary>The least.</summary>
    public double Least { get; private set; } = double.MaxValue;

    /// <summary>The most.</summary>
    public double Most { get; private set; } = double.MinValue;

    /// <summary>How many fell into each bar; what lies beyond the ends is in the outermost.</summary>
    public IReadOnlyList<long> Histogram => _bars;

    /// <summary>Cpk: the nearer limit's distance from the mean over three deviations (NIST/SEMATECH e-Handbook, 6.1.6); null without limit or spread.</summary>
    public double? Capability
    {
        get
        {
            double near = Math.Min(High - Mean ?? double.MaxValue, Mean - Low ?? double.MaxValue);
            return Deviation > 0 && near < double.MaxValue ? near / (3 * Deviation) : null;
        }
    }

    /// <summary>True when the limits aren't the same for every head: mean, spread and bars then say little.</summary>
    public bool LimitsShift { get; private set; }

    /// <summary>Where a bar begins.</summary>
    public double Start(int bar) => From + ((To - From) * bar / Bars);

    /// <summary>True for a bar that lies beyond a limit as a whole.</summary>
    public bool IsOut(int bar) =>
        (Low is { } low && Start(bar + 1) <= low + 1e-9) || (High is { } high && Start(bar) >= high - 1e-9);

    internal void Add(double value, bool isOut, double? low, double? high)
    {
        LimitsShift |= !Same(low, Low) || !Same(high, High);
        _values.Add(value);
        Out += isOut ? 1 : 0;
        (Least, Most) = (Math.Min(Least, value), Math.Max(Most, value));
        double at = (value - From) / (To - From) * Bars;
        _bars[(int)Math.Clamp(double.IsFinite(at) ? at : 0, 0, Bars - 1)]++;
    }

    internal void Add(Distribution other)
    {
        if (other.Count == 0)
        {
            return;
        }

        _values.Add(other._values);
        LimitsShift |= other.LimitsShift || !Same(other.Low, Low) || !Same(other.High, High);
        Out += other.Out;
        (Least, Most) = (Math.Min(Least, other.Least), Math.Max(Most, other.Most));
        for (int i = 0; i < Bars; i++)
        {
            _bars[i] += other._bars[i];
        }
    }

    private static bool Same(double? a, double? b) =>
        a is { } one && b is { } other ? Math.Abs(one - other) < 1e-7 : a is null && b is null;
}
