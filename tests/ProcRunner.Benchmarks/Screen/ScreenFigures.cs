using System.Globalization;

namespace ProcRunner.Benchmarks.Screen;

/// <summary>What was measured of one program on a terminal of 120 by 40.</summary>
/// <param name="Program">Its name.</param>
/// <param name="FirstPaint">Milliseconds from start to the first picture, median of the starts.</param>
/// <param name="EchoMedian">Milliseconds from a key to the first byte that answers it, median.</param>
/// <param name="EchoP95">The same, 95 of 100 keys.</param>
/// <param name="BytesPerKey">Bytes sent for a key, median.</param>
/// <param name="MostBytes">The most bytes sent for a key.</param>
/// <param name="IdlePercent">Part of one core while nothing is pressed, in percent.</param>
/// <param name="MemoryMiB">Resident memory in MiB.</param>
internal sealed record ScreenFigures(
    string Program,
    double FirstPaint,
    double EchoMedian,
    double EchoP95,
    double BytesPerKey,
    double MostBytes,
    double IdlePercent,
    double MemoryMiB
)
{
    private static readonly TimeSpan Quiet = TimeSpan.FromMilliseconds(25);
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan Settled = TimeSpan.FromMilliseconds(500);
    private static readonly TimeSpan IdleTime = TimeSpan.FromSeconds(10);

    // A picture of a whole screen is longer than this, and no question to the terminal is.
    private const int PictureBytes = 300;
    private const int Starts = 15;
    private const int Keys = 300;

    /// <summary>Measures a program.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="ready">Keys that bring it to where keys are answered.</param>
    /// <param name="key">The key pressed the nth time.</param>
    /// <param name="program">The program.</param>
    /// <param name="words">Its arguments.</param>
    public static ScreenFigures Of(
        string name,
        string ready,
        Func<int, string> key,
        string program,
        params string[] words
    )
    {
        double first = Timing.Quantile(
            [.. Enumerable.Range(0, Starts).Select(_ => TimeToPicture(program, words))],
            0.5
        );
        using Pty pty = new(120, 40, program, words);
        pty.ReadUntilQuiet(Settled);
        pty.Type(ready);
        pty.ReadUntilQuiet(Settled);

        List<double> echoes = [];
        List<double> bytes = [];
        for (int i = 0; i < Keys; i++)
        {
            // Not in step with anything that the program does at intervals.
            Thread.Sleep(10 + (i * 7 % 23));
            pty.ReadUntilQuiet(TimeSpan.Zero);
            int count = 0;
            string next = key(i);
            echoes.Add(
                Timing.Of(() =>
                {
                    pty.Type(next);
                    count = pty.Read(Longest).Length;
                })
            );
            if (count == 0)
            {
                throw new TimeoutException($"{name} didn't answer a key.");
            }

            bytes.Add(count + pty.ReadUntilQuiet(Quiet).Length);
        }

        TimeSpan before = pty.ProcessorTime();
        long start = System.Diagnostics.Stopwatch.GetTimestamp();
        while (System.Diagnostics.Stopwatch.GetElapsedTime(start) < IdleTime)
        {
            pty.Read(Settled);
        }

        double idle = (pty.ProcessorTime() - before) / System.Diagnostics.Stopwatch.GetElapsedTime(start) * 100;
        return new(
            name,
            first,
            Timing.Quantile(echoes, 0.5),
            Timing.Quantile(echoes, 0.95),
            Timing.Quantile(bytes, 0.5),
            bytes.Max(),
            idle,
            pty.ResidentMiB()
        );
    }

    /// <inheritdoc/>
    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"| {Program} | {FirstPaint:0} | {EchoMedian:0.0} | {EchoP95:0.0} | {BytesPerKey:0} | {MostBytes:0} | {IdlePercent:0.0} | {MemoryMiB:0} |"
        );

    private static double TimeToPicture(string program, string[] words)
    {
        using Pty pty = new(120, 40, program, words);
        int count = 0;
        while (count < PictureBytes && pty.Read(Longest) is { Length: > 0 } some)
        {
            count += some.Length;
        }

        double time = System.Diagnostics.Stopwatch.GetElapsedTime(pty.Started).TotalMilliseconds;
        return count < PictureBytes ? throw new TimeoutException($"{program} drew nothing.") : time;
    }
}
