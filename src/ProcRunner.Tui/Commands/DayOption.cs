using System.CommandLine;
using System.Globalization;

namespace ProcRunner.Tui.Commands;

/// <summary>An option that takes a day of the shop's calendar.</summary>
internal static class DayOption
{
    /// <summary>A new one.</summary>
    public static Option<string?> Create(string name, string description) =>
        new(name) { Description = description, HelpName = "yyyy-mm-dd" };

    /// <summary>The moment at which a day begins where the program runs; null with the fault when it isn't one.</summary>
    public static (DateTimeOffset? Begins, string Fault) Begin(string? text, int daysLater = 0)
    {
        if (text is null)
        {
            return (null, "");
        }

        if (
            !DateOnly.TryParseExact(
                text,
                "yyyy-MM-dd",
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out DateOnly day
            )
        )
        {
            return (null, $"{text} is no day; write it as 2026-03-31.");
        }

        DateTime local = day.AddDays(daysLater).ToDateTime(TimeOnly.MinValue);
        return (new DateTimeOffset(local, Shell.Machine.Time.LocalTimeZone.GetUtcOffset(local)), "");
    }
}
