namespace ProcRunner.Trail;

/// <summary>Fills the bytes with randomness fit for keys. The core has none of its own.</summary>
public delegate void EntropySource(Span<byte> destination);
