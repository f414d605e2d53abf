namespace ProcRunner.Procedures;

/// <summary>What a person's mark under a stage can mean.</summary>
public static class SignMeanings
{
    /// <summary>The meaning that ends a job; the last step of every procedure.</summary>
    public const string Released = "released";

    /// <summary>All meanings.</summary>
    public static IReadOnlyList<string> All { get; } = ["measured", "checked", "approved", Released];
}
