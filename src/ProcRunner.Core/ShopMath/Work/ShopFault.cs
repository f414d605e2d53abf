namespace ProcRunner.ShopMath;

/// <summary>Why a calculation gives nothing: a value that it can't take. A person or a file caused it, so it is a value.</summary>
/// <param name="Argument">The value's name, in words.</param>
/// <param name="Read">What was read, with its unit.</param>
/// <param name="Allowed">What is allowed, or what to do: a clause without a full stop.</param>
public sealed record ShopFault(string Argument, string Read, string Allowed)
{
    /// <summary><c>diameter: 0 mm was read; a diameter is above 0</c>.</summary>
    public override string ToString() => $"{Argument}: {Read} was read; {Allowed}";
}
