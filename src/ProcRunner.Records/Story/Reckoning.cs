using ProcRunner.Quantities;

namespace ProcRunner.Records.Story;

/// <summary>A number that the record works out: not in the trail itself, but from what is.</summary>
/// <param name="What">What it is.</param>
/// <param name="Position">The position's name, or "head".</param>
/// <param name="Left">The number.</param>
/// <param name="Terms">What it is worked out from: the first less all the others.</param>
/// <param name="Words">The same in words.</param>
/// <param name="Origin">Who the limit in it comes from.</param>
public sealed record Reckoning(
    string What,
    string Position,
    Quantity Left,
    IReadOnlyList<Quantity> Terms,
    string Words,
    string Origin
)
{
    /// <summary>The working: <c>3.9260 in - 3.9150 in</c>.</summary>
    public string Working => string.Join(" - ", Terms);
}
