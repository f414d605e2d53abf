namespace ProcRunner.Records;

/// <summary>How a value stands.</summary>
public enum ValueStanding
{
    /// <summary>There is nothing to judge it by.</summary>
    Recorded,

    /// <summary>Within limits.</summary>
    In,

    /// <summary>Out of limits, not settled.</summary>
    Out,

    /// <summary>Out of limits, used by a concession.</summary>
    Conceded,

    /// <summary>A cut that hasn't come to its aim yet.</summary>
    Short,

    /// <summary>What it rests on moved since; a step takes it again.</summary>
    Recheck,

    /// <summary>What it rests on moved since, and nothing takes it again: it tells how the head came.</summary>
    AsFound,
}
