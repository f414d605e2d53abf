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

    /// <summary>Makes a person with a new key pair, certified with a lead's PIN; null: the shop's first lead.</summary>
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
        using UnlockedKey? lead = certifiedBy is null ? null : TryUnlock(certifiedBy.Lead, certifiedBy.Pin);
        return certifiedBy is null || lead is not null
            ? CreateCertified(id, name, role, pin, rounds, entropy, lead)
            : new PersonMaking.WrongPin();
    }

    /// <summary>Makes a person with a new key pair.</summary>
    /// <param name="id">Short, unique in the shop; uniqueness is the caller's to see to.</param>
    /// <param name="name">The name to print.</param>
    /// <param name="role">What they may do.</param>
    /// <param name="pin">Their PIN.</param>
    /// <param name="rounds">PBKDF2 rounds, 1 or more.</param>
    /// <param name="entropy">Where randomness comes from.</param>
    /// <param name="certifiedBy">The lead who vouches; null for a first lead, whose key certifies itself.</param>
    public static PersonMaking CreateCertified(
        string id,
        string name,
        Role role,
        string pin,
        int rounds,
        EntropySource entropy,
        UnlockedKey? certifiedBy
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

        return (certifiedBy?.Person.Role ?? role) == Role.Lead && certifiedBy?.Person.RetiredAt is null
            ? new PersonMaking.Made(NewPerson(id, name, role, pin, rounds, entropy, certifiedBy))
            : new PersonMaking.NotALead();
    }

    /// <summary>
    /// The same person with a new key behind a new PIN, for a PIN that is forgotten. A lead vouches for the new key; what the
    /// old one signed stays good, and it signs nothing more.
    /// </summary>
    /// <exception cref="ArgumentException">The PIN is too weak for the role.</exception>
    public static Person Reset(Person person, string newPin, int rounds, EntropySource entropy, UnlockedKey lead)
    {
        ArgumentNullException.ThrowIfNull(person);
        ArgumentNullException.ThrowIfNull(entropy);
        ArgumentNullException.ThrowIfNull(lead);
        return PinRule.Check(person.Role, newPin) is null
            ? NewPerson(person.Id, person.Name, person.Role, newPin, rounds, entropy, lead)
            : throw new ArgumentException("The PIN is too weak.", nameof(newPin));
    }

    /// <summary>The same key behind another PIN.</summary>
    /// <exception cref="ArgumentException">The PIN is too weak for the role.</exception>
    public static WrappedKey Rewrap(UnlockedKey key, string newPin, int rounds, EntropySource entropy)
    {
        ArgumentNullException.ThrowIfNull(key);
        ArgumentNullException.ThrowIfNull(entropy);
        return PinRule.Check(key.Person.Role, newPin) is null
            ? key.Wrap(newPin, rounds, entropy)
            : throw new ArgumentException("The PIN is too weak.", nameof(newPin));
    }

    /// <summary>
    /// The same person with the same key and PIN under another name or role, certified anew. For somebody who becomes a lead a
    /// <see cref="Reset"/> follows: a lead's PIN is longer.
    /// </summary>
    public static PersonMaking Recertify(Person person, string name, Role role, UnlockedKey lead)
    {
        ArgumentNullException.ThrowIfNull(person);
        ArgumentNullException.ThrowIfNull(lead);
        if (person.IsRoot || lead.Person is not { Role: Role.Lead, RetiredAt: null })
        {
            return new PersonMaking.NotALead();
        }

        return IsName(name)
            ? new PersonMaking.Made(
                person with
                {
                    Name = name,
                    Role = role,
                    CertifiedBy = lead.Person.Id,
                    Certificate = lead.SignBase64(CertificateText(person.Id, name, role, person.PublicKey)),
                }
            )
            : new PersonMaking.BadName();
    }

    /// <summary>Opens a person's key; takes as long as the rounds ask. Null when the PIN is wrong or the sealed key was altered.</summary>
    public static UnlockedKey? TryUnlock(Person person, string pin)
    {
        ArgumentNullException.ThrowIfNull(person);
        byte[]? privateKey = KeyWrap.Unwrap(person, pin);
        if (privateKey is null)
        {
            return null;
        }

        var key = ECDsa.Create();
        key.ImportPkcs8PrivateKey(privateKey, out _);
        CryptographicOperations.ZeroMemory(privateKey);
        return new(person, key);
    }

    /// <summary>Signs bytes with a person's key; takes as long as the rounds ask.</summary>
    public static SigningResult TrySign(Person person, string pin, ReadOnlySpan<byte> bytes)
    {
        using UnlockedKey? key = TryUnlock(person, pin);
        return key is null ? new SigningResult.WrongPin() : new SigningResult.Made(key.Sign(bytes));
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

    // Without a lead the key certifies itself.
    private static Person NewPerson(
        string id,
        string name,
        Role role,
        string pin,
        int rounds,
        EntropySource entropy,
        UnlockedKey? lead
    )
    {
        ECDsa key = NewKey(entropy);
        string publicKey = Convert.ToBase64String(key.ExportSubjectPublicKeyInfo());
        byte[] privateKey = key.ExportPkcs8PrivateKey();
        WrappedKey wrapped = KeyWrap.Wrap(privateKey, id, publicKey, pin, rounds, entropy);
        CryptographicOperations.ZeroMemory(privateKey);
        Person person = new(id, name, role, publicKey, wrapped, lead?.Person.Id ?? id, "");
        using UnlockedKey own = new(person, key);
        return person with { Certificate = (lead ?? own).SignBase64(CertificateText(id, name, role, publicKey)) };
    }

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
