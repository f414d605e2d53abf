using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Runs.Prompts;

/// <summary>
/// All that a person needs to know at one step at one moment, worked out once for every front: where, what to do, to
/// which number, within which limits, what was entered before, what can be done now.
/// </summary>
public sealed record Prompt
{
    /// <summary>Where.</summary>
    public required At At { get; init; }

    /// <summary>The step.</summary>
    public required Step Step { get; init; }

    /// <summary>The stage's name.</summary>
    public required string Stage { get; init; }

    /// <summary>The position's name, or "head".</summary>
    public required string Position { get; init; }

    /// <summary>What kind of entry is waited for.</summary>
    public Awaited Awaits { get; internal set; }

    /// <summary>What to do, in a sentence.</summary>
    public string ToDo { get; internal set; } = "";

    /// <summary>The unit an entry has when none is typed, or null.</summary>
    public Unit? Unit { get; internal set; }

    /// <summary>The places to enter, in order; empty for a single value.</summary>
    public IReadOnlyList<string> Places { get; internal set; } = [];

    /// <summary>What a reading will be judged by, shift included; no ends when it is only recorded.</summary>
    public Judgement Window { get; internal set; } = Judgement.None;

    /// <summary>Why the limits aren't known yet; empty when they are.</summary>
    public string NoLimits { get; internal set; } = "";

    /// <summary>The gauge in use, or empty.</summary>
    public string Gauge { get; internal set; } = "";

    /// <summary>What the readout is to be set to.</summary>
    public Quantity? NumberToSet { get; internal set; }

    /// <summary>How the readout is set up, confirmed at each zero; empty elsewhere.</summary>
    public string Readout { get; internal set; } = "";

    /// <summary>The number to cut to.</summary>
    public CutTarget? Target { get; internal set; }

    /// <summary>Where the cut stands.</summary>
    public CutProgress? Progress { get; internal set; }

    /// <summary>Numbers worked out for it.</summary>
    public IReadOnlyList<NumberShown> Numbers { get; init; } = [];

    /// <summary>Findings or choices, in order.</summary>
    public IReadOnlyList<string> Choices { get; internal set; } = [];

    /// <summary>Ways on, when the result is out of spec.</summary>
    public IReadOnlyList<WayOn> WaysOn { get; internal set; } = [];

    /// <summary>What is out of spec, line by line.</summary>
    public IReadOnlyList<string> Faults { get; internal set; } = [];

    /// <summary>The question about the last entry, or null.</summary>
    public RunEvent.EntryQuestioned? Question { get; init; }

    /// <summary>Why it is to be taken again; empty when it is taken for the first time.</summary>
    public string Recheck { get; init; } = "";

    /// <summary>Every reading taken here so far.</summary>
    public IReadOnlyList<TakenReading> Before { get; init; } = [];
}
