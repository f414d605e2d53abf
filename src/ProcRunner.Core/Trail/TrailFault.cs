namespace ProcRunner.Trail;

/// <summary>The ways in which an entry of a trail doesn't hold.</summary>
public enum TrailFault
{
    /// <summary>The file holds nothing.</summary>
    Empty,

    /// <summary>The last line isn't whole: torn off while it was written, or altered.</summary>
    TornTail,

    /// <summary>The line isn't JSON, TAB, digest.</summary>
    NotAnEntry,

    /// <summary>The line is longer than an entry may be.</summary>
    TooLong,

    /// <summary>The line isn't UTF-8.</summary>
    NotUtf8,

    /// <summary>The digest isn't that of the bytes before it: the line was changed.</summary>
    Changed,

    /// <summary>The bytes aren't what the canonical writer writes.</summary>
    NotCanonical,

    /// <summary>A newer program's version, or none that was ever written.</summary>
    UnknownVersion,

    /// <summary>A key is missing, unknown, or holds what it can't.</summary>
    WrongShape,

    /// <summary>The entry belongs to another trail.</summary>
    AnotherTrail,

    /// <summary>The number is higher than it should be: entries before this one are missing.</summary>
    Missing,

    /// <summary>The number is lower than it should be: put in, repeated or moved.</summary>
    OutOfOrder,

    /// <summary>The entry doesn't follow from the one before: that one was replaced.</summary>
    Unchained,

    /// <summary>An entry stands after the one that closed the job out.</summary>
    AfterCloseOut,
}
