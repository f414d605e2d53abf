using ProcRunner.Runs;

namespace ProcRunner.Records;

/// <summary>A value as it stands, with all that is known of it.</summary>
/// <param name="Name">The characteristic.</param>
/// <param name="Position">The position's name, or "head".</param>
/// <param name="Record">Value, places, limits, verdict.</param>
/// <param name="Step">The step that took it.</param>
/// <param name="Gauge">The gauge's id; empty when none is kept or the value was worked out.</param>
/// <param name="WorkedOut">True when it was worked out from other readings.</param>
/// <param name="Working">The formula with its numbers, of a value that was worked out.</param>
/// <param name="FoundPlaces">As found, place by place; empty for a single value and where nothing was found.</param>
/// <param name="Standing">How it stands.</param>
/// <param name="By">Who entered it.</param>
/// <param name="LimitNote">What the head spec says besides of the limit it was held to; empty for nothing.</param>
/// <param name="Before">What moved later that it is measured from: it was so before that; empty when nothing did.</param>
/// <param name="FromTheNewFace">What it comes to from the face as it was cut, with its working; empty where that isn't known.</param>
public sealed record FinalValue(
    string Name,
    string Position,
    ValueRecord Record,
    string Step,
    string Gauge,
    bool WorkedOut,
    string Working,
    IReadOnlyList<PlaceValue> FoundPlaces,
    ValueStanding Standing,
    Stamped By,
    string LimitNote,
    string Before = "",
    string FromTheNewFace = ""
)
{
    /// <summary>The words for what <see cref="IsUnderSince"/> tells.</summary>
    public const string UnderItsLow = "UNDER ITS LOW LIMIT";

    /// <summary>True when it was found outside the limits that hold now.</summary>
    public bool CameOutside =>
        Record.AsFound is { } found
        && (
            (Record.Judgement.Low is { } low && low.Dimension == found.Dimension && found.CompareTo(low) < 0)
            || (Record.Judgement.High is { } high && high.Dimension == found.Dimension && found.CompareTo(high) > 0)
        );

    /// <summary>True when a cut that came after it has taken it under its low limit.</summary>
    public bool IsUnderSince => FromTheNewFace.EndsWith(UnderItsLow, StringComparison.Ordinal);

    /// <summary>How it stands, as words.</summary>
    public string Verdict =>
        Before.Length == 0 ? Word
        : FromTheNewFace.Length == 0 ? $"{Word}, measured before: {Before}"
        : $"{Word}, measured before: {Before}; from the new face {FromTheNewFace}";

    private string Word =>
        Standing switch
        {
            ValueStanding.Recheck => $"recheck: {Record.Cause}",
            ValueStanding.AsFound => $"as found, before: {Record.Cause}",
            ValueStanding.Conceded => "conceded",
            ValueStanding.In => "in limits",
            ValueStanding.Out => "out of spec",
            ValueStanding.Short => "not deep enough yet",
            _ => "recorded",
        };
}
