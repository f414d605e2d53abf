using System.Diagnostics;

namespace ProcRunner.Benchmarks;

/// <summary>Times in milliseconds.</summary>
internal static class Timing
{
    public static double Of(Action work)
    {
        long start = Stopwatch.GetTimestamp();
        work();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    /// <summary>The value that a part of all values isn't above; 0.5 is the median.</summary>
    public static double Quantile(IReadOnlyList<double> times, double part)
    {
        double[] sorted = [.. times.Order()];
        return sorted[(int)Math.Min(sorted.Length - 1, sorted.Length * part)];
    }
}
