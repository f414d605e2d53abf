using System.Globalization;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Times for a person.</summary>
internal static class Ago
{
    private const int MostDays = 60;

    /// <summary>How long ago, in the largest unit that says it: <c>12 min</c>, <c>3 h</c>, <c>2 days</c>; long ago, the day.</summary>
    public static string Of(DateTimeOffset? then, DateTimeOffset now)
    {
        if (then is not { } at)
        {
            return "";
        }

        // A clock that was set back makes the future of the past.
        TimeSpan span = now - at;
        return span < TimeSpan.FromMinutes(1) ? "now"
            : span < TimeSpan.FromHours(1) ? Count(span.TotalMinutes, "min")
            : span < TimeSpan.FromDays(2) ? Count(span.TotalHours, "h")
            : span < TimeSpan.FromDays(MostDays + 1) ? Count(span.TotalDays, "days")
            : Day(DateOnly.FromDateTime(at.ToOffset(now.Offset).Date));
    }

    /// <summary>Date and time of day, as the clock on the wall had it.</summary>
    public static string Clock(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    /// <summary>A day.</summary>
    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Count(double number, string unit) =>
        string.Create(CultureInfo.InvariantCulture, $"{(long)number} {unit}");
}
