using ProcRunner.Runs;

namespace ProcRunner.Tui.Jobs;

/// <summary>A value that counts now, with all that is known of it.</summary>
/// <param name="Name">The characteristic.</param>
/// <param name="Position">The position's name, or "head".</param>
/// <param name="Record">Value, places, limits, verdict.</param>
/// <param name="Step">The step that took it.</param>
/// <param name="Gauge">The gauge's id; empty when none is kept or the value was worked out.</param>
/// <param name="WorkedOut">True when it was worked out from other readings.</param>
/// <param name="Verdict">How it stands, as a word.</param>
internal sealed record FinalValue(
    string Name,
    string Position,
    ValueRecord Record,
    string Step,
    string Gauge,
    bool WorkedOut,
    string Verdict
);
