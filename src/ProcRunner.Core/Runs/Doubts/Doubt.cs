using ProcRunner.Quantities;

namespace ProcRunner.Runs.Doubts;

/// <summary>What is hard to believe about a reading.</summary>
/// <param name="Why">In words, with the numbers.</param>
/// <param name="Within">A second reading this near to the first says the same as far as this doubt goes.</param>
internal sealed record Doubt(string Why, Rational Within);
