using ProcRunner.Quantities;

namespace ProcRunner.Procedures;

/// <summary>One row of a selection table: what is given for a value over one bound, up to and including the other.</summary>
/// <param name="Over">The value is larger than this; null: from the smallest on.</param>
/// <param name="UpTo">The value is this or smaller; null: to the largest.</param>
/// <param name="Gives">What is selected.</param>
public sealed record SelectionRow(Quantity? Over, Quantity? UpTo, Quantity Gives)
{
    /// <summary>The bounds in words.</summary>
    public string Bounds =>
        (Over, UpTo) switch
        {
            ({ } over, { } upTo) => $"over {over} up to {upTo}",
            ({ } over, null) => $"over {over}",
            (null, { } upTo) => $"up to {upTo}",
            _ => "everything",
        };

    /// <summary>Whether a value of the bounds' dimension is the row's.</summary>
    public bool Holds(Exact value) =>
        !(Over is { } over && value.CompareTo(Exact.Of(over)) <= 0)
        && !(UpTo is { } upTo && value.CompareTo(Exact.Of(upTo)) > 0);
}
