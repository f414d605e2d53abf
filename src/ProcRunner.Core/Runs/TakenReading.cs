using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>How a value stands against its limits.</summary>
public enum Verdict
{
    /// <summary>There is nothing to judge it by.</summary>
    Unjudged,

    /// <summary>Within limits; exactly on one counts.</summary>
    In,

    /// <summary>Out of limits.</summary>
    Out,

    /// <summary>A cut that hasn't come to its aim yet: more metal is to go, nothing is wrong.</summary>
    Short,
}

/// <summary>What a value was judged against, and how it came out. Kept as it was on the day.</summary>
/// <param name="Verdict">How it came out.</param>
/// <param name="Low">Low limit, shift included, or null.</param>
/// <param name="Aim">Aim, shift included, or null.</param>
/// <param name="High">High limit, shift included, or null.</param>
/// <param name="Origin">Who the limit comes from, in words.</param>
/// <param name="Detail">What is wrong, in words; empty when nothing is.</param>
public sealed record Judgement(
    Verdict Verdict,
    Quantity? Low,
    Quantity? Aim,
    Quantity? High,
    string Origin,
    string Detail
)
{
    /// <summary>Nothing to judge by.</summary>
    public static Judgement None { get; } = new(Verdict.Unjudged, null, null, null, "", "");
}

/// <summary>A value at one of the places of a reading.</summary>
/// <param name="Place">The place's name; empty for a single value.</param>
/// <param name="Value">The value as entered.</param>
public readonly record struct PlaceValue(string Place, Quantity Value);

/// <summary>A value worked out from a reading.</summary>
/// <param name="Name">The characteristic.</param>
/// <param name="Value">The value.</param>
/// <param name="Working">The formula with its numbers.</param>
/// <param name="Judgement">How it came out.</param>
public sealed record WorkedValue(string Name, Quantity Value, string Working, Judgement Judgement);

/// <summary>One reading as it was taken.</summary>
public sealed record TakenReading
{
    /// <summary>The characteristic.</summary>
    public required string Characteristic { get; init; }

    /// <summary>What was typed.</summary>
    public required string Typed { get; init; }

    /// <summary>What it was taken as, place by place.</summary>
    public required IReadOnlyList<PlaceValue> Places { get; init; }

    /// <summary>The value that counts.</summary>
    public required Quantity Value { get; init; }

    /// <summary>The gauge's id, or empty.</summary>
    public required string Gauge { get; init; }

    /// <summary>How it came out.</summary>
    public required Judgement Judgement { get; init; }

    /// <summary>What was worked out from it.</summary>
    public required IReadOnlyList<WorkedValue> Worked { get; init; }

    /// <summary>What the geometry had predicted, after a cut; null otherwise.</summary>
    public Quantity? Predicted { get; init; }

    /// <summary>True when predicted and measured differ by more than their uncertainty allows.</summary>
    public bool Disagrees { get; init; }

    /// <summary>True when nothing about it is out of limits.</summary>
    public bool Good => Judgement.Verdict != Verdict.Out && Worked.All(w => w.Judgement.Verdict != Verdict.Out);

    /// <summary>What is wrong with it, line by line.</summary>
    public IEnumerable<string> Faults =>
        Worked
            .Where(w => w.Judgement.Verdict == Verdict.Out)
            .Select(w => w.Judgement.Detail)
            .Prepend(Judgement.Verdict == Verdict.Out ? Judgement.Detail : "")
            .Where(d => d.Length > 0);
}
