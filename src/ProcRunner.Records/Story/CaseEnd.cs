namespace ProcRunner.Records.Story;

/// <summary>How a result out of spec was settled.</summary>
public enum CaseEnd
{
    /// <summary>It isn't.</summary>
    Open,

    /// <summary>Measured or inspected again, after work or without, and good.</summary>
    Settled,

    /// <summary>Used as it is, by a written permission.</summary>
    Conceded,

    /// <summary>The head was given up.</summary>
    Scrapped,
}
