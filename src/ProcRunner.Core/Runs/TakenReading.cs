using ProcRunner.Quantities;

namespace ProcRunner.Runs;

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
