namespace ProcRunner.ShopMath;

/// <summary>What a <see cref="WorkFunction"/> gives.</summary>
/// <param name="Results">The results, the one most asked for first; at least one.</param>
/// <param name="Steps">How they were worked out, in order.</param>
public sealed record WorkAnswer(IReadOnlyList<WorkFigure> Results, IReadOnlyList<WorkStep> Steps)
{
    /// <summary>The result of a name; null if there is none.</summary>
    public WorkFigure? Find(string name) => Results.FirstOrDefault(one => one.Name == name);
}
