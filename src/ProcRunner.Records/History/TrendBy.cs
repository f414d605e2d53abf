namespace ProcRunner.Records.History;

/// <summary>What a reading's history is told apart by.</summary>
public enum TrendBy
{
    /// <summary>Nothing: all of it together.</summary>
    All,

    /// <summary>Who took it.</summary>
    Person,

    /// <summary>The gauge.</summary>
    Gauge,

    /// <summary>The cutter named last before it.</summary>
    Cutter,

    /// <summary>The head family.</summary>
    Head,
}
