namespace ProcRunner.Records.Drawings;

/// <summary>Which part of a text stands at its point.</summary>
internal enum Anchor
{
    /// <summary>Its left end.</summary>
    Start,

    /// <summary>Its middle.</summary>
    Middle,

    /// <summary>Its right end.</summary>
    End,
}
