using ProcRunner.Quantities;

namespace ProcRunner.Records.Drawings;

/// <summary>A value with its limits, as numbers to draw and texts to write.</summary>
/// <param name="Name">What is written beside it: a position, a place.</param>
/// <param name="Value">The value.</param>
/// <param name="Low">Low limit or null.</param>
/// <param name="Aim">Aim or null.</param>
/// <param name="High">High limit or null.</param>
/// <param name="Found">As found, or null.</param>
/// <param name="Standing">How it stands.</param>
internal sealed record PlottedValue(
    string Name,
    Quantity Value,
    Quantity? Low,
    Quantity? Aim,
    Quantity? High,
    Quantity? Found,
    ValueStanding Standing
)
{
    /// <summary>True for one that is out of spec, conceded or not.</summary>
    public bool NeedsAttention => Standing is ValueStanding.Out or ValueStanding.Conceded;

    /// <summary>The word that stands beside one that isn't simply within its limits.</summary>
    public string Word =>
        Standing switch
        {
            ValueStanding.Out => "OUT",
            ValueStanding.Conceded => "CONCEDED",
            ValueStanding.Recheck => "RECHECK",
            ValueStanding.Short => "NOT DONE",
            _ => "",
        };

    /// <summary>The value of a record's value.</summary>
    public static PlottedValue Of(FinalValue value) =>
        new(
            value.Position,
            value.Record.Value,
            value.Record.Judgement.Low,
            value.Record.Judgement.Aim,
            value.Record.Judgement.High,
            value.Record.AsFound is { } found && !found.SameAs(value.Record.Value) ? found : null,
            value.Standing
        );
}
