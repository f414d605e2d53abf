using System.Collections.Immutable;

namespace ProcRunner.People;

/// <summary>What came of signing.</summary>
public abstract record SigningResult
{
    private SigningResult() { }

    /// <summary>Signed.</summary>
    /// <param name="Signature">ECDSA over SHA-256, DER (RFC 3279, section 2.2.3).</param>
    public sealed record Made(ImmutableArray<byte> Signature) : SigningResult;

    /// <summary>The PIN doesn't open the key.</summary>
    public sealed record WrongPin : SigningResult;
}
