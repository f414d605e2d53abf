using ProcRunner.Quantities;

namespace ProcRunner.Procedures;

/// <summary>One of the questions that a reading can raise.</summary>
/// <param name="On">False when the procedure switches it off.</param>
/// <param name="By">How far off raises it; null: the usual, which the rule works out from gauge and limits.</param>
public sealed record DoubtRule(bool On, Quantity? By)
{
    /// <summary>Asked, at the usual distance.</summary>
    public static DoubtRule Usual { get; } = new(On: true, By: null);

    /// <summary>Never asked.</summary>
    public static DoubtRule Off { get; } = new(On: false, By: null);
}
