namespace ProcRunner.People;

/// <summary>Someone who may sign, as the shop book knows them.</summary>
/// <param name="Id">Short and unique in the shop: what an entry's operator field holds.</param>
/// <param name="Name">The name that is printed beside a signature.</param>
/// <param name="Role">What the person may do.</param>
/// <param name="PublicKey">ECDSA P-256, SubjectPublicKeyInfo (RFC 5480) in base64.</param>
/// <param name="WrappedKey">The private half, behind the PIN.</param>
/// <param name="CertifiedBy">The id of the lead who certified the key; the person's own id for the shop's root.</param>
/// <param name="Certificate">That lead's signature over <see cref="PersonKeys.CertificateText"/>, base64.</param>
/// <param name="RetiredAt">When the person left, null while they are here. What they signed before stays good.</param>
public sealed record Person(
    string Id,
    string Name,
    Role Role,
    string PublicKey,
    WrappedKey WrappedKey,
    string CertifiedBy,
    string Certificate,
    DateTimeOffset? RetiredAt = null
)
{
    /// <summary>
    /// The key that the certificate was made with: the certifier's then, whatever it is now. Not in the event: the
    /// shop book's order tells it; empty outside of <see cref="Shop.ShopState"/>.
    /// </summary>
    public string CertifierKey { get; init; } = "";

    /// <summary>True for a first lead, whose key certifies itself.</summary>
    public bool IsRoot => CertifiedBy == Id;
}
