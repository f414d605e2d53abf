using System.Globalization;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>A line of a form that takes the day until which a calibration holds.</summary>
internal static class DayField
{
    private const string NoDate = "no date";
    private static readonly int[] Months = [6, 12, 24];
    private static readonly string[] Forms = ["yyyy-M-d", "yyyy.M.d", "yyyyMMdd", "yyyy M d"];

    /// <summary>The line, with what is usual as stock answers.</summary>
    /// <param name="today">Today.</param>
    /// <param name="now">What it is until now; null for no date.</param>
    public static Field Of(DateOnly today, DateOnly? now) =>
        new("calibrated until")
        {
            Hint = () =>
                "The last day on which its calibration holds, from its certificate: 2027.5.31 or 20270531. A number takes one of these.",
            Choices = () => [NoDate, .. Months.Select(months => Ago.Day(today.AddMonths(months)))],
            Proposed = () => now is { } day ? Ago.Day(day) : NoDate,
            Fault = text => text == NoDate || Read(text) is not null ? null : "That is no day. Type it as 2027.5.31.",
        };

    /// <summary>The day of a text; null for none.</summary>
    public static DateOnly? Read(string text) =>
        DateOnly.TryParseExact(text, Forms, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day)
            ? day
            : null;
}
