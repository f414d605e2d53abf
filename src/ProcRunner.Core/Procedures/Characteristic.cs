using ProcRunner.Quantities;

namespace ProcRunner.Procedures;

/// <summary>
/// What is measured at a position or on the head: recession, guide bore. Its latest value that isn't stale counts,
/// whichever step took it.
/// </summary>
public sealed record Characteristic
{
    /// <summary>Name, unique in the procedure.</summary>
    public required string Name { get; init; }

    /// <summary>True when there is one for the head; false when there is one a position.</summary>
    public required bool OfHead { get; init; }

    /// <summary>The kind of quantity.</summary>
    public required Dimension Dimension { get; init; }

    /// <summary>The unit an entry has when none is typed; null: the one that goes with the head spec's unit of length.</summary>
    public required Unit? MeasuredIn { get; init; }

    /// <summary>Names of the places in the order they are entered; empty for a single value.</summary>
    public IReadOnlyList<string> Places { get; init; } = [];

    /// <summary>Which of the places counts. Has no effect on a single value.</summary>
    public Statistic Takes { get; init; } = Statistic.Largest;

    /// <summary>The kind of gauge it is read with, or null when no gauge is kept for it.</summary>
    public string? GaugeKind { get; init; }

    /// <summary>Data and characteristics which, when they move, make its value stale.</summary>
    public IReadOnlyList<string> RestsOn { get; init; } = [];

    /// <summary>
    /// Data that it is measured from but needn't be measured again for, since it can't be or stands for how the work was done: a
    /// record says when one of them moved later.
    /// </summary>
    public IReadOnlyList<string> MeasuredFrom { get; init; } = [];

    /// <summary>Which way it goes as the part wears.</summary>
    public Wear Wears { get; init; }

    /// <summary>Which questions its readings can raise.</summary>
    public DoubtRules Doubts { get; init; } = DoubtRules.Usual;

    /// <summary>Why the value matters, shown when it is refused.</summary>
    public string Why { get; init; } = "";

    /// <summary>True when it is worked out from other values rather than read from a gauge.</summary>
    public bool WorkedOut { get; init; }

    /// <summary>The unit on this head.</summary>
    public Unit UnitOn(HeadSpec head) => MeasuredIn ?? PaperUnits.Of(Dimension, head.LengthUnit);
}
