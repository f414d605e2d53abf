namespace ProcRunner.Procedures;

/// <summary>How far a move of a datum reaches.</summary>
public enum Reach
{
    /// <summary>The position worked at; for a datum of the head, the head.</summary>
    Here,

    /// <summary>The positions next to it in the order of the head, and itself not.</summary>
    Neighbours,

    /// <summary>Every position.</summary>
    Everywhere,
}
