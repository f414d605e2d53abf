namespace ProcRunner.Records.Papers;

/// <summary>A row of a table.</summary>
/// <param name="Cells">Its cells.</param>
/// <param name="NeedsAttention">True for one about something out of spec.</param>
internal sealed record Row(IReadOnlyList<string> Cells, bool NeedsAttention = false);
