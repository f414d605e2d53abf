namespace ProcRunner.Tests.Storage;

/// <summary>How an operation fails.</summary>
public enum Failure
{
    /// <summary>Nothing was done.</summary>
    Before,

    /// <summary>A write got half way; any other operation did nothing.</summary>
    Half,

    /// <summary>It was done, and yet reported as failed.</summary>
    After,
}
