namespace ProcRunner.Trail;

/// <summary>The ways in which bytes fail to be canonical JSON.</summary>
public enum JsonFaultKind
{
    /// <summary>The bytes aren't UTF-8 (an encoded surrogate counts as such).</summary>
    NotUtf8,

    /// <summary>The text ends inside a value.</summary>
    EndsTooSoon,

    /// <summary>A byte that can't stand here: white space, a leading zero, a raw control character, a wrong word.</summary>
    Unexpected,

    /// <summary>A key stands twice in one map.</summary>
    DuplicateKey,

    /// <summary>The keys of a map aren't sorted by UTF-16 code units.</summary>
    KeysNotSorted,

    /// <summary>An escape where RFC 8785 writes the character itself, or another escape than RFC 8785 writes.</summary>
    WrongEscape,

    /// <summary>A number with a fraction or an exponent.</summary>
    NotAWholeNumber,

    /// <summary>A whole number of 2^53 or more in size.</summary>
    NumberTooLarge,

    /// <summary>More than <see cref="Json.MaxDepth"/> containers inside each other.</summary>
    TooDeep,

    /// <summary>Something follows the value.</summary>
    MoreAfterEnd,
}
