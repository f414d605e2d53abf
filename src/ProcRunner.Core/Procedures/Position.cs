namespace ProcRunner.Procedures;

/// <summary>One valve's place on the head.</summary>
/// <param name="Cylinder">Cylinder number, from 1.</param>
/// <param name="Kind">Intake or exhaust, with a letter where there are several: I, E, IA, EB.</param>
/// <param name="GuideAngle">Angle between guide axis and deck normal, degrees; 0 on most two-valve heads.</param>
public sealed record Position(int Cylinder, string Kind, decimal GuideAngle)
{
    /// <summary>The name a machinist marks on the valve: <c>3E</c>.</summary>
    public string Name { get; } = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Cylinder}{Kind}");

    /// <inheritdoc/>
    public override string ToString() => Name;
}
