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

    /// <summary>The first value of all, place by place: how the head came, when taken in an as-found stage.</summary>
    public Quantity? AsFound { get; internal set; }
}
