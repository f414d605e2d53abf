namespace ProcRunner.People;

/// <summary>What a person may do.</summary>
public enum Role
{
    /// <summary>Works and signs.</summary>
    Operator,

    /// <summary>Works; a lead signs beside.</summary>
    Trainee,

    /// <summary>Signs for others, concedes, scraps, and certifies people.</summary>
    Lead,
}
