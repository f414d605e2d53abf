using System.Globalization;

namespace ProcRunner.Trail;

/// <summary>
/// An entry that is dated before the one it follows: somebody set the clock back, or it was wrong before. It is accepted, since
/// the order of entries is their number and their digests and never the clock; it is only marked.
/// </summary>
/// <param name="Entry">The entry's number.</param>
/// <param name="At">Its time, UTC.</param>
/// <param name="Before">The time of the entry before, later than that.</param>
public sealed record ClockSetBack(long Entry, DateTimeOffset At, DateTimeOffset Before)
{
    /// <summary>Every such entry of a trail.</summary>
    public static IEnumerable<ClockSetBack> In(IEnumerable<TrailEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        DateTimeOffset? before = null;
        foreach (TrailEntry entry in entries)
        {
            if (before is { } last && entry.At < last)
            {
                yield return new(entry.Sequence, entry.At, last);
            }

            before = entry.At;
        }
    }

    /// <summary>It in words, for a person.</summary>
    public string InWords() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"Entry {Entry} is dated {At.UtcDateTime:yyyy-MM-dd HH:mm:ss} UTC, before entry {Entry - 1} ({Before.UtcDateTime:yyyy-MM-dd HH:mm:ss} UTC): the clock was set back. The entries' order is their number."
        );
}
