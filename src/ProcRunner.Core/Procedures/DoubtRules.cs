namespace ProcRunner.Procedures;

/// <summary>Which questions a characteristic's readings can raise before they are taken.</summary>
public sealed record DoubtRules
{
    /// <summary>All of them, as usual.</summary>
    public static DoubtRules Usual { get; } = new();

    /// <summary>None of them.</summary>
    public static DoubtRules None { get; } =
        new()
        {
            OneTurn = DoubtRule.Off,
            AgainstWear = DoubtRule.Off,
            Swapped = DoubtRule.Off,
            OddOneOut = DoubtRule.Off,
        };

    /// <summary>About one turn of the gauge's dial off.</summary>
    public DoubtRule OneTurn { get; init; } = DoubtRule.Usual;

    /// <summary>A worn part that got bigger, a worn bore that got smaller.</summary>
    public DoubtRule AgainstWear { get; init; } = DoubtRule.Usual;

    /// <summary>Fits what was found at another position better than what was found here.</summary>
    public DoubtRule Swapped { get; init; } = DoubtRule.Usual;

    /// <summary>Far from the other positions of its kind.</summary>
    public DoubtRule OddOneOut { get; init; } = DoubtRule.Usual;
}
