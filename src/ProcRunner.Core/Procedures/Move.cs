namespace ProcRunner.Procedures;

/// <summary>A move of a datum or of a characteristic.</summary>
/// <param name="Of">What moves.</param>
/// <param name="Reach">Where.</param>
public sealed record Move(string Of, Reach Reach);
