namespace ProcRunner.Trail;

/// <summary>Why an entry's digest is written into the shop book as well.</summary>
public enum Anchor
{
    /// <summary>It isn't.</summary>
    None,

    /// <summary>The job was opened: the first entry of its trail.</summary>
    Opened,

    /// <summary>A stage was signed off.</summary>
    SignedOff,

    /// <summary>The job went to another person's hands.</summary>
    HandedOver,

    /// <summary>The job was closed out: the last entry of its trail.</summary>
    ClosedOut,
}
