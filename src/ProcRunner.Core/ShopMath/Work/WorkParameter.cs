namespace ProcRunner.ShopMath;

/// <summary>A value that a <see cref="WorkFunction"/> asks for.</summary>
/// <param name="Name">As it is typed: small letters, digits and hyphens.</param>
/// <param name="Takes">What may be given.</param>
/// <param name="Summary">What it is, in a few words; for an optional one also what holds without it.</param>
/// <param name="IsOptional">Whether it may be left out.</param>
public sealed record WorkParameter(string Name, WorkTakes Takes, string Summary, bool IsOptional = false)
{
    /// <summary>The name with spaces for hyphens.</summary>
    public string Words => Name.Replace('-', ' ');
}
