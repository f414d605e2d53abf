namespace ProcRunner.Formulas;

/// <summary>One function of the language: what it takes and gives, how it is worked out, and all that help says about it.</summary>
/// <remarks>
/// The record is the only place that knows the function: the checker, the evaluator, the help and the page of the language
/// are driven by it. To add one, add a record to a table that <see cref="FormulaFunctions.All"/> lists.
/// </remarks>
public sealed record FormulaFunction
{
    /// <summary>How it is written: small letters only.</summary>
    public required string Name { get; init; }

    /// <summary>What it takes, in order.</summary>
    public required IReadOnlyList<FormulaParameter> Parameters { get; init; }

    /// <summary>Whether the last parameter may be given any number of times.</summary>
    public bool Repeats { get; init; }

    /// <summary>What it gives.</summary>
    public required FormulaGives Gives { get; init; }

    /// <summary>What it is for, in a few words.</summary>
    public required string Summary { get; init; }

    /// <summary>What a person should know before relying on it.</summary>
    public required string Details { get; init; }

    /// <summary>The relation as it would be written on paper.</summary>
    public required string Relation { get; init; }

    /// <summary>Where the relation comes from.</summary>
    public required string Source { get; init; }

    /// <summary>At least one example; all of them are worked out by a test.</summary>
    public required IReadOnlyList<FormulaExample> Examples { get; init; }

    // Can't be required, being less visible than the record; a record without it fails the test of its examples.
    internal FormulaWork Work { get; init; } =
        new FormulaWork.Numbers(_ => FormulaNumber.Not("the function has no work"));

    /// <summary><c>sink(removed: length, face angle: angle): length</c>.</summary>
    public string Signature =>
        $"{Name}({string.Join(", ", Parameters.Select(one => $"{one.Name}: {one.Takes}"))}{(Repeats ? ", ..." : "")}): {Gives}";

    internal bool TakesCount(int count) => Repeats ? count >= Parameters.Count : count == Parameters.Count;

    internal FormulaParameter ParameterAt(int index) => Parameters[Math.Min(index, Parameters.Count - 1)];
}
