namespace ProcRunner.ShopMath;

/// <summary>What a measured value with its uncertainty proves (ISO 14253-1).</summary>
public enum Conformity
{
    /// <summary>The value lies inside the zone by at least the uncertainty.</summary>
    Proved,

    /// <summary>Neither is proved: the value is nearer to a limit than the uncertainty.</summary>
    NotDecided,

    /// <summary>The value lies outside the zone by more than the uncertainty.</summary>
    Disproved,
}
