namespace ProcRunner.Runs;

/// <summary>Where a job stands as a whole.</summary>
public enum JobStanding
{
    /// <summary>Being worked on.</summary>
    Open,

    /// <summary>Put aside with a reason.</summary>
    Held,

    /// <summary>Signed out to the customer. Final.</summary>
    Released,

    /// <summary>The head was given up. Final.</summary>
    Scrapped,
}
