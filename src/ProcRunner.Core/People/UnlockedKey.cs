using System.Collections.Immutable;
using System.Security.Cryptography;
using ProcRunner.Trail;

namespace ProcRunner.People;

/// <summary>A person's private key, opened with the PIN once for several signatures. Disposed, it is gone from memory.</summary>
public sealed class UnlockedKey : IDisposable
{
    private readonly ECDsa _key;

    internal UnlockedKey(Person person, ECDsa key) => (Person, _key) = (person, key);

    /// <summary>Whose key it is.</summary>
    public Person Person { get; }

    /// <summary>Signs bytes: ECDSA over SHA-256, DER.</summary>
    public ImmutableArray<byte> Sign(ReadOnlySpan<byte> bytes) =>
        [.. _key.SignData(bytes, HashAlgorithmName.SHA256, DSASignatureFormat.Rfc3279DerSequence)];

    /// <summary>Signs bytes; the signature in base64.</summary>
    public string SignBase64(ReadOnlySpan<byte> bytes) => Convert.ToBase64String(Sign(bytes).AsSpan());

    /// <summary>Seals the key with a PIN.</summary>
    internal WrappedKey Wrap(string pin, int rounds, EntropySource entropy)
    {
        byte[] privateKey = _key.ExportPkcs8PrivateKey();
        WrappedKey wrapped = KeyWrap.Wrap(privateKey, Person.Id, Person.PublicKey, pin, rounds, entropy);
        CryptographicOperations.ZeroMemory(privateKey);
        return wrapped;
    }

    /// <inheritdoc/>
    public void Dispose() => _key.Dispose();
}
