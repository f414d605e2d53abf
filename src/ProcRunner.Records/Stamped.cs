namespace ProcRunner.Records;

/// <summary>Which entry says so, who made it, and when.</summary>
/// <param name="Entry">The entry's number.</param>
/// <param name="Id">The person's id.</param>
/// <param name="Person">The person's name, or their id where the shop book names nobody.</param>
/// <param name="At">When, in the shop's time.</param>
public sealed record Stamped(long Entry, string Id, string Person, DateTimeOffset At)
{
    /// <summary>The time for a person: <c>2026-03-01 14:05</c>, the shop's own.</summary>
    public string Time => At.ToString("yyyy-MM-dd HH:mm", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>The time for a program: with its offset.</summary>
    public string Exact => At.ToString("yyyy-MM-dd'T'HH:mm:sszzz", System.Globalization.CultureInfo.InvariantCulture);
}
