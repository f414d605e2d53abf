namespace ProcRunner.Procedures;

/// <summary>What can be done about a result that is out of spec.</summary>
public enum WayKind
{
    /// <summary>Measure or inspect again; every reading is kept.</summary>
    Again,

    /// <summary>Go back to an earlier step and do it over.</summary>
    Rework,

    /// <summary>Another part, then over from an earlier step.</summary>
    Replace,

    /// <summary>Written permission to use what is out of spec: a lead, PIN and reason.</summary>
    Concession,

    /// <summary>The head is given up: a lead, PIN and reason. Ends the job.</summary>
    Scrap,
}

/// <summary>One disposition that a step allows.</summary>
/// <param name="Text">The words that choose it.</param>
/// <param name="Kind">What it does.</param>
/// <param name="BackTo">Index of the step the work goes back to; null for kinds that stay.</param>
/// <param name="Replaces">The part that is replaced, or null.</param>
/// <param name="Decides">Decisions it changes: subject and choice.</param>
/// <param name="Moves">What it moves besides.</param>
public sealed record WayOn(
    string Text,
    WayKind Kind,
    int? BackTo,
    string? Replaces,
    IReadOnlyList<KeyValuePair<string, string>> Decides,
    IReadOnlyList<Move> Moves
);
