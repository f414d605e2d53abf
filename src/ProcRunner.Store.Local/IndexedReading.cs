namespace ProcRunner.Store.Local;

/// <summary>A reading, or a value worked out from one, as history is made of it.</summary>
/// <param name="Name">The characteristic.</param>
/// <param name="At">When it was taken; kept to the millisecond, in UTC.</param>
/// <param name="Person">The id of who took it.</param>
/// <param name="Gauge">The id of the gauge; empty for none.</param>
/// <param name="Cutter">The cutter named last before it; empty for none.</param>
/// <param name="Position">Where, "head" for the head.</param>
/// <param name="Kind">The kind of position, as the head spec has it; empty for the head.</param>
/// <param name="Value">The value with its unit, as in the trail.</param>
/// <param name="Low">The low limit of that moment; empty for none.</param>
/// <param name="Aim">The aim; empty for none.</param>
/// <param name="High">The high limit; empty for none.</param>
/// <param name="Verdict">How it came out, as the trail has it.</param>
/// <param name="AsFound">True when it says how the head came in, not what was made of it.</param>
public sealed record IndexedReading(
    string Name,
    DateTimeOffset At,
    string Person,
    string Gauge,
    string Cutter,
    string Position,
    string Kind,
    string Value,
    string Low,
    string Aim,
    string High,
    string Verdict,
    bool AsFound
);
