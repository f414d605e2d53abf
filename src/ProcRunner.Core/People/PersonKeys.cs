using System.Collections.Immutable;
using System.Security.Cryptography;
using ProcRunner.Text;
using ProcRunner.Trail;

namespace ProcRunner.People;

/// <summary>
/// Makes people's keys, signs with them and checks signatures. A key is ECDSA on P-256 with SHA-256 (FIPS 186-5);
/// signatures are DER and public keys SubjectPublicKeyInfo, so that openssl alone checks them.
/// </summary>
public static class PersonKeys
{
    /// <summary>PBKDF2 rounds for a new PIN unless told otherwise (OWASP's figure for PBKDF2-HMAC-SHA-256, 2023).</summary>
    public const int DefaultRounds = 600_000;

    // The order of P-256 (FIPS 186-5 / SP 800-186, section 3.2.1.3): a private key lies from 1 to this less 1.
    private static readonly byte[] Order = Convert.FromHexString(
        "ffffffff00000000ffffffffffffffffbce6faada7179e84f3b9cac2fc632551"
    );

    /// <summary>Makes a person with a new key pair.</summary>
    /// <param name="id">Short, unique in the shop; uniqueness is the caller's to see to.</param>
    /// <param name="name">The name to print.</param>
    /// <param name="role">What they may do.</param>
    /// <param name="pin">Their PIN.</param>
    /// <param name="rounds">PBKDF2 rounds, 1 or more.</param>
    /// <param name="entropy">Where randomness comes from.</param>
    /// <param name="certifiedBy">The lead who vouches; null for the shop's root, who must be a lead.</param>
    public static PersonMaking Create(
        string id,
        string name,
        Role role,
        string pin,
        int rounds,
        EntropySource entropy,
        Certifier? certifiedBy
    )
    {
        ArgumentNullException.ThrowIfNull(entropy);
        ArgumentOutOfRangeException.ThrowIfLessThan(rounds, 1);
        if (!IsName(id) || !IsName(name))
        {
            return new PersonMaking.BadName();
        }

        if (PinRule.Check(role, pin) is { } fault)
        {
            return new PersonMaking.BadPin(fault);
        }

        if ((certifiedBy?.Lead.Role ?? role) != Role.Lead || certifiedBy?.Lead.RetiredAt is not null)
        {
            return new PersonMaking.NotALead();
        }

        using ECDsa key = NewKey(entropy);
        string publicKey = Convert.ToBase64String(key.ExportSubjectPublicKeyInfo());
        byte[] privateKey = key.ExportPkcs8PrivateKey();
        WrappedKey wrapped = KeyWrap.Wrap(privateKey, id, publicKey, pin, rounds, entropy);
        CryptographicOperations.ZeroMemory(privateKey);
        byte[] text = CertificateText(id, name, role, publicKey);
        SigningResult signing = certifiedBy is null
            ? new SigningResult.Made(Sign(key, text))
            : TrySign(certifiedBy.Lead, certifiedBy.Pin, text);
        return signing is SigningResult.Made signed
            ? new PersonMaking.Made(
                new(
                    id,
                    name,
                    role,
                    publicKey,
                    wrapped,
                    certifiedBy?.Lead.Id ?? id,
                    Convert.ToBase64String(signed.Signature.AsSpan())
                )
            )
            : new PersonMaking.WrongPin();
    }

    /// <summary>The same person with the same key behind a new PIN.</summary>
    public static PersonMaking ChangePin(Person person, string oldPin, string newPin, int rounds, EntropySource entropy)
    {
        ArgumentNullException.ThrowIfNull(person);
        ArgumentNullException.ThrowIfNull(entropy);
        if (PinRule.Check(person.Role, newPin) is { } fault)
        {
            return new PersonMaking.BadPin(fault);
        }

        byte[]? privateKey = KeyWrap.Unwrap(person, oldPin);
        if (privateKey is null)
        {
            return new PersonMaking.WrongPin();
        }

        WrappedKey wrapped = KeyWrap.Wrap(privateKey, person.Id, person.PublicKey, newPin, rounds, entropy);
        CryptographicOperations.ZeroMemory(privateKey);
        return new PersonMaking.Made(person with { WrappedKey = wrapped });
    }

    /// <summary>
    /// The same person with the same key and PIN under another name or role, certified anew. Nobody becomes a lead this way:
    /// a lead's PIN is longer, so a lead is made afresh.
    /// </summary>
    public static PersonMaking Recertify(Person person, string name, Role role, Certifier certifier)
    {
        ArgumentNullException.ThrowIfNull(person);
        ArgumentNullException.ThrowIfNull(certifier);
        bool becomesLead = role == Role.Lead && person.Role != Role.Lead;
        if (becomesLead || person.IsRoot || certifier.Lead.Role != Role.Lead || certifier.Lead.RetiredAt is not null)
        {
            return new PersonMaking.NotALead();
        }

        if (!IsName(name))
        {
            return new PersonMaking.BadName();
        }

        byte[] text = CertificateText(person.Id, name, role, person.PublicKey);
        return TrySign(certifier.Lead, certifier.Pin, text) is SigningResult.Made made
            ? new PersonMaking.Made(
                person with
                {
                    Name = name,
                    Role = role,
                    CertifiedBy = certifier.Lead.Id,
                    Certificate = Convert.ToBase64String(made.Signature.AsSpan()),
                }
            )
            : new PersonMaking.WrongPin();
    }

    /// <summary>Signs bytes with a person's key; takes as long as the rounds ask.</summary>
    public static SigningResult TrySign(Person person, string pin, ReadOnlySpan<byte> bytes)
    {
        ArgumentNullException.ThrowIfNull(person);
        byte[]? privateKey = KeyWrap.Unwrap(person, pin);
        if (privateKey is null)
        {
            return new SigningResult.WrongPin();
        }

        using var key = ECDsa.Create();
        key.ImportPkcs8PrivateKey(privateKey, out _);
        CryptographicOperations.ZeroMemory(privateKey);
        return new SigningResult.Made(Sign(key, bytes));
    }

    /// <summary>True when the signature is the person's over these bytes. A key or signature that can't be read gives false.</summary>
    public static bool Verify(Person person, ReadOnlySpan<byte> bytes, ReadOnlySpan<byte> signature)
    {
        ArgumentNullException.ThrowIfNull(person);
        try
        {
            using var key = ECDsa.Create();
            key.ImportSubjectPublicKeyInfo(Convert.FromBase64String(person.PublicKey), out _);
            return key.VerifyData(bytes, signature, HashAlgorithmName.SHA256, DSASignatureFormat.Rfc3279DerSequence);
        }
        catch (Exception e) when (e is CryptographicException or FormatException)
        {
            return false;
        }
    }

    /// <summary>True when the person's certificate is the certifier's signature; the root certifies itself.</summary>
    public static bool IsCertified(Person person, Person certifier)
    {
        ArgumentNullException.ThrowIfNull(person);
        ArgumentNullException.ThrowIfNull(certifier);
        byte[] certificate = new byte[(person.Certificate.Length / 4 * 3) + 3];
        return person.CertifiedBy == certifier.Id
            && certifier.Role == Role.Lead
            && Convert.TryFromBase64String(person.Certificate, certificate, out int length)
            && Verify(
                certifier,
                CertificateText(person.Id, person.Name, person.Role, person.PublicKey),
                certificate.AsSpan(0, length)
            );
    }

    /// <summary>What a certificate signs: canonical JSON of id, key, name and role.</summary>
    public static byte[] CertificateText(string id, string name, Role role, string publicKey) =>
        CanonicalJson.Write(
            Json.MapOf(
                ("id", new Json.Text(id)),
                ("key", new Json.Text(publicKey)),
                ("name", new Json.Text(name)),
                ("role", new Json.Text(RoleWord.Of(role)))
            )
        );

    /// <summary>SHA-256 of the public key's SubjectPublicKeyInfo, in groups of four hexadecimal digits.</summary>
    public static string Fingerprint(Person person)
    {
        ArgumentNullException.ThrowIfNull(person);
        byte[] spki = new byte[(person.PublicKey.Length / 4 * 3) + 3];
        Convert.TryFromBase64String(person.PublicKey, spki, out int length);
        string hex = Digest.Of(spki.AsSpan(0, length)).ToString();
        return string.Join(' ', Enumerable.Range(0, 16).Select(i => hex.Substring(i * 4, 4)));
    }

    private static bool IsName(string text) => !string.IsNullOrWhiteSpace(text) && SafeText.Clean(text) == text;

    private static ImmutableArray<byte> Sign(ECDsa key, ReadOnlySpan<byte> bytes) =>
        [.. key.SignData(bytes, HashAlgorithmName.SHA256, DSASignatureFormat.Rfc3279DerSequence)];

    private static ECDsa NewKey(EntropySource entropy)
    {
        byte[] secret = new byte[32];
        do
        {
            entropy(secret);
        } while (secret.AsSpan().SequenceCompareTo(Order) >= 0 || !secret.AsSpan().ContainsAnyExcept((byte)0));

        var key = ECDsa.Create(new ECParameters { Curve = ECCurve.NamedCurves.nistP256, D = secret });
        CryptographicOperations.ZeroMemory(secret);
        return key;
    }
}
