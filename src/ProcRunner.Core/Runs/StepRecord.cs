namespace ProcRunner.Runs;

/// <summary>What is known of one step at one position.</summary>
public sealed class StepRecord
{
    /// <summary>Where it stands.</summary>
    public StepStanding Standing { get; internal set; }

    /// <summary>True when what it rests on has moved since it was done.</summary>
    public bool Stale { get; internal set; }

    /// <summary>Why it is stale or was reopened; empty otherwise.</summary>
    public string Cause { get; internal set; } = "";

    /// <summary>Sequence of the entry with its last result; 0 before any.</summary>
    public long Sequence { get; internal set; }

    /// <summary>The choice, finding, part or remark it ended with; empty otherwise.</summary>
    public string Said { get; internal set; } = "";

    /// <summary>Results out of spec since it was last begun anew.</summary>
    public int Fails { get; internal set; }

    /// <summary>True when its result stands by a concession.</summary>
    public bool Conceded { get; internal set; }

    /// <summary>An entry that was questioned and not yet answered, or null.</summary>
    public RunEvent.EntryQuestioned? Question { get; internal set; }

    /// <summary>A cut's progress, or of a zero step the zero; null before.</summary>
    public CutProgress? Cut { get; internal set; }

    /// <summary>A zero step's reading since it was last begun, or null.</summary>
    public TakenReading? AtZero { get; internal set; }

    /// <summary>A cut's progress before its last pass, for correcting that pass.</summary>
    public CutProgress? BeforeLastPass { get; internal set; }

    /// <summary>A cut's progress before its last reading, for correcting that reading; null after a pass.</summary>
    public CutProgress? BeforeReading { get; internal set; }

    /// <summary>True once a cut has been brought to its approach since its zero: from there it goes to the aim.</summary>
    public bool Approached { get; internal set; }

    /// <summary>Every reading ever taken here, the refused ones too.</summary>
    public List<TakenReading> Readings { get; } = [];
}
