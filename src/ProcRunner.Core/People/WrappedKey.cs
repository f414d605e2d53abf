namespace ProcRunner.People;

/// <summary>
/// The private half of a person's key (PKCS#8) behind the PIN: PBKDF2-HMAC-SHA-256 (RFC 8018, section 5.2) makes a 256-bit
/// key of the PIN, AES-GCM (NIST SP 800-38D) seals the private half with it and binds it to the person's id and public key.
/// </summary>
/// <param name="Rounds">PBKDF2 rounds.</param>
/// <param name="Salt">16 random bytes, base64.</param>
/// <param name="Nonce">12 random bytes, base64.</param>
/// <param name="Sealed">Ciphertext and the 16 bytes of its tag, base64.</param>
public sealed record WrappedKey(int Rounds, string Salt, string Nonce, string Sealed);
