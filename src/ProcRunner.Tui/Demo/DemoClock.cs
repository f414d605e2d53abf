using System.Text.RegularExpressions;

namespace ProcRunner.Tui.Demo;

/// <summary>
/// A clock that walks through a shop's days while a file of entries is worked, each entry taking about as long as the work it
/// tells of, and that ends by now. For the demo shop alone, whose entries are invented like all else of it.
/// </summary>
internal sealed partial class DemoClock : TimeProvider
{
    private const double MinutesOfWork = 5;
    private const double MinutesOfAnEntry = 0.7;
    private const double MinutesOfANumber = 0.3;

    // Work before and after the break, from Monday to Friday: invented, in minutes of the day.
    private static readonly (int From, int To)[] Hours = [((7 * 60) + 30, 12 * 60), ((12 * 60) + 45, (16 * 60) + 15)];

    private readonly DateTimeOffset _end;
    private readonly TimeZoneInfo _zone;
    private double _left;

    /// <summary>A clock for these lines.</summary>
    /// <param name="now">When the last of them is to be over, in the shop's own time.</param>
    /// <param name="zone">The shop's time zone.</param>
    /// <param name="lines">The lines that are going to be entered.</param>
    public DemoClock(DateTimeOffset now, TimeZoneInfo zone, IEnumerable<string> lines)
    {
        (_end, _zone) = (now, zone);
        _left = lines.Sum(MinutesOf);
    }

    /// <inheritdoc/>
    public override TimeZoneInfo LocalTimeZone => _zone;

    /// <inheritdoc/>
    public override DateTimeOffset GetUtcNow() => Before(_end, _left).ToUniversalTime();

    /// <summary>Walks on by what a line takes.</summary>
    public void Walk(string line) => _left = Math.Max(0, _left - MinutesOf(line));

    // A remark, a question where the run is and an empty line take no time.
    private static double MinutesOf(string line)
    {
        string text = line.Trim();
        return text.Length == 0 || text[0] is '#' or '@' ? 0
            : text.StartsWith("done", StringComparison.Ordinal) ? MinutesOfWork
            : MinutesOfAnEntry + (MinutesOfANumber * Number().Count(text));
    }

    // So many working minutes before a moment.
    private static DateTimeOffset Before(DateTimeOffset end, double minutes)
    {
        for (DateTimeOffset day = new(end.Date, end.Offset); ; day = day.AddDays(-1))
        {
            if (day.DayOfWeek is DayOfWeek.Saturday or DayOfWeek.Sunday)
            {
                continue;
            }

            foreach ((int from, int to) in Hours.Reverse())
            {
                double last = Math.Min(to, (end - day).TotalMinutes);
                if (last - from > minutes)
                {
                    return day.AddMinutes(last - minutes);
                }

                minutes -= Math.Max(0, last - from);
            }
        }
    }

    [GeneratedRegex("[0-9.]+", RegexOptions.NonBacktracking)]
    private static partial Regex Number();
}
