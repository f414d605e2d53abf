using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>The latest value of a characteristic at a position.</summary>
public sealed class ValueRecord
{
    /// <summary>The value that counts.</summary>
    public Quantity Value { get; internal set; }

    /// <summary>Place by place; empty for a worked-out value.</summary>
    public IReadOnlyList<PlaceValue> Places { get; internal set; } = [];

    /// <summary>What it was judged against.</summary>
    public Judgement Judgement { get; internal set; } = Judgement.None;

    /// <summary>Index of the step that took it.</summary>
    public int ByStep { get; internal set; }

    /// <summary>Sequence of its entry.</summary>
    public long Sequence { get; internal set; }

    /// <summary>True when its datum has moved since.</summary>
    public bool Stale { get; internal set; }

    /// <summary>Why it is stale.</summary>
    public string Cause { get; internal set; } = "";

    /// <summary>Index of the step that moved it; -1 for a reported change.</summary>
    public int Mover { get; internal set; } = -1;

    /// <summary>How the head came: what the first step of an as-found stage that takes it took before anything moved; null while there is none.</summary>
    public Quantity? AsFound { get; internal set; }

    /// <summary>Index of that step; -1 while there is none.</summary>
    public int AsFoundBy { get; internal set; } = -1;
}
