using ProcRunner.Problems;

namespace ProcRunner.Lessons;

/// <summary>A fault that a lesson plants, and what catches it.</summary>
/// <param name="Name">Short name.</param>
/// <param name="What">What is wrong, in words.</param>
/// <param name="Step">Full name of the step at which it is to be caught.</param>
/// <param name="Position">The position, or null for the head.</param>
/// <param name="Answer">The finding, choice or way on that catches it.</param>
/// <param name="Why">The rule behind it, in words.</param>
/// <param name="Source">Where it stands in the file.</param>
public sealed record PlantedFault(
    string Name,
    string What,
    string Step,
    string? Position,
    string Answer,
    string Why,
    Place Source
)
{
    /// <summary>A change that, reported at its position before the step is answered, catches it as well; null: none.</summary>
    public string? OrChange { get; init; }

    /// <summary>The reading or inspection that shows it, where another step than its own takes that; null: its own step's.</summary>
    public string? ShownBy { get; init; }
}
