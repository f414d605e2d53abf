using System.Security.Cryptography;
using ProcRunner.Trail;

namespace ProcRunner.People;

/// <summary>Seals a private key with a PIN and opens it again, as <see cref="WrappedKey"/> says.</summary>
internal static class KeyWrap
{
    private const int KeyBytes = 32;
    private const int SaltBytes = 16;
    private const int NonceBytes = 12;
    private const int TagBytes = 16;

    // More would be a way to freeze whoever opens a forged shop book.
    private const int MostRounds = 50_000_000;

    /// <summary>Seals a private key.</summary>
    public static WrappedKey Wrap(
        byte[] privateKey,
        string id,
        string publicKey,
        string pin,
        int rounds,
        EntropySource entropy
    )
    {
        byte[] salt = new byte[SaltBytes];
        byte[] nonce = new byte[NonceBytes];
        entropy(salt);
        entropy(nonce);
        byte[] box = new byte[privateKey.Length + TagBytes];
        byte[] key = Rfc2898DeriveBytes.Pbkdf2(pin, salt, rounds, HashAlgorithmName.SHA256, KeyBytes);
        using (var aes = new AesGcm(key, TagBytes))
        {
            aes.Encrypt(
                nonce,
                privateKey,
                box.AsSpan(..privateKey.Length),
                box.AsSpan(privateKey.Length..),
                Bound(id, publicKey)
            );
        }

        CryptographicOperations.ZeroMemory(key);
        return new(rounds, Convert.ToBase64String(salt), Convert.ToBase64String(nonce), Convert.ToBase64String(box));
    }

    /// <summary>Opens a person's private key (PKCS#8); null when the PIN doesn't fit or the sealed key was altered.</summary>
    public static byte[]? Unwrap(Person person, string pin)
    {
        WrappedKey wrapped = person.WrappedKey;
        if (wrapped.Rounds is < 1 or > MostRounds)
        {
            return null;
        }

        try
        {
            byte[] box = Convert.FromBase64String(wrapped.Sealed);
            byte[] salt = Convert.FromBase64String(wrapped.Salt);
            byte[] nonce = Convert.FromBase64String(wrapped.Nonce);
            if (box.Length < TagBytes || nonce.Length != NonceBytes)
            {
                return null;
            }

            byte[] key = Rfc2898DeriveBytes.Pbkdf2(pin, salt, wrapped.Rounds, HashAlgorithmName.SHA256, KeyBytes);
            byte[] privateKey = new byte[box.Length - TagBytes];
            using var aes = new AesGcm(key, TagBytes);
            CryptographicOperations.ZeroMemory(key);
            aes.Decrypt(
                nonce,
                box.AsSpan(..^TagBytes),
                box.AsSpan(^TagBytes..),
                privateKey,
                Bound(person.Id, person.PublicKey)
            );
            return privateKey;
        }
        catch (Exception e) when (e is CryptographicException or FormatException)
        {
            return null;
        }
    }

    private static byte[] Bound(string id, string publicKey) =>
        CanonicalJson.Write(Json.MapOf(("id", new Json.Text(id)), ("key", new Json.Text(publicKey))));
}
