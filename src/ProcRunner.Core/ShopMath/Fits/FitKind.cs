namespace ProcRunner.ShopMath;

/// <summary>What two parts' limits make of a fit (ISO 286-1:2010, terms of fits).</summary>
public enum FitKind
{
    /// <summary>The hole is never the smaller one.</summary>
    Clearance,

    /// <summary>Either may be the larger one: a press fit of this kind can be loose.</summary>
    Transition,

    /// <summary>The part is never the smaller one; at its loosest the interference may be 0.</summary>
    Interference,
}
