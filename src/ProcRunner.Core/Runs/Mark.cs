namespace ProcRunner.Runs;

/// <summary>A person's mark: who, when, and the signature over what it covers.</summary>
/// <param name="Person">Person's id.</param>
/// <param name="Name">Person's name as printed.</param>
/// <param name="At">When it was signed, UTC.</param>
/// <param name="Signature">ECDSA P-256 over the covered bytes, DER, base64.</param>
public sealed record Mark(string Person, string Name, DateTimeOffset At, string Signature);
