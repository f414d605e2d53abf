using System.Globalization;

namespace ProcRunner.Tui.Shell;

/// <summary>How far long work has got, on stderr; quiet for work that is soon done.</summary>
internal sealed class Progress(TimeProvider time, TextWriter output, string what)
{
    private static readonly TimeSpan Every = TimeSpan.FromSeconds(1);
    private long _last = time.GetTimestamp();

    /// <summary>Says it, at most once a second.</summary>
    public void Report(int done, int of)
    {
        if (time.GetElapsedTime(_last) < Every)
        {
            return;
        }

        _last = time.GetTimestamp();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}: {done} of {of}"));
    }
}
