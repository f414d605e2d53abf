namespace ProcRunner.Lessons;

/// <summary>How a gauge shows what it measures.</summary>
public enum FaceKind
{
    /// <summary>An instrument with figures.</summary>
    Digits,

    /// <summary>A sleeve, a thimble that turns over it, a vernier where the step is finer than a line of the thimble.</summary>
    Micrometer,

    /// <summary>A hand that goes round more than once, a small one that counts the turns.</summary>
    Dial,

    /// <summary>A dial that was set to zero in a ring of known size.</summary>
    Ring,

    /// <summary>A hand over a scale that it doesn't go round.</summary>
    Scale,

    /// <summary>Leaves of known thickness, one after the other, until one doesn't go in.</summary>
    Leaves,
}
