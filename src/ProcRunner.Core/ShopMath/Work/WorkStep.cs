namespace ProcRunner.ShopMath;

/// <summary>One step of a working, as it would be written on paper.</summary>
/// <param name="Name">What is worked out.</param>
/// <param name="Formula">In words and signs.</param>
/// <param name="WithNumbers">The same with the numbers filled in.</param>
/// <param name="Result">The number and its unit, or a word.</param>
public sealed record WorkStep(string Name, string Formula, string WithNumbers, string Result)
{
    /// <summary>The step as lines.</summary>
    public IReadOnlyList<string> Lines =>
        WithNumbers == Formula
            ? [$"{Name} = {Formula}", $"    = {Result}"]
            : [$"{Name} = {Formula}", $"    = {WithNumbers}", $"    = {Result}"];
}
