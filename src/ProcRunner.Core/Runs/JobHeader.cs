namespace ProcRunner.Runs;

/// <summary>What a job is, fixed when it is opened.</summary>
public sealed record JobHeader
{
    /// <summary>The number stamped on the head, unique in the store.</summary>
    public required string Stamp { get; init; }

    /// <summary>SHA-256 of the procedure's text, lower hex.</summary>
    public required string ProcedureDigest { get; init; }

    /// <summary>SHA-256 of the head spec's text, lower hex.</summary>
    public required string HeadDigest { get; init; }

    /// <summary>Whose head it is; may be empty.</summary>
    public string Customer { get; init; } = "";

    /// <summary>What the customer complains of; may be empty.</summary>
    public string Complaint { get; init; } = "";

    /// <summary>What is known of earlier work; may be empty.</summary>
    public string EarlierWork { get; init; } = "";

    /// <summary>True for a job on a practice head: worth nothing to a customer.</summary>
    public bool Practice { get; init; }
}
