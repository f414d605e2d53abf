using ProcRunner.People;
using ProcRunner.Trail;

namespace ProcRunner.Shop;

/// <summary>
/// Who stands by a change to the shop's people or settings: a signature over the change itself and over the shop book's
/// last digest before it, so that it can't be moved, repeated or put in by somebody who only has the files.
/// </summary>
/// <param name="By">The signer's id.</param>
/// <param name="Signature">ECDSA P-256 over <see cref="Text"/>, DER, base64.</param>
public sealed record SignedAct(string By, string Signature)
{
    private const string SignatureKey = "signature";

    /// <summary>
    /// What is signed: canonical JSON of <c>act</c>, the event as it is stored without its signature, and <c>book</c>, the
    /// digest of the shop book's entry before (the field <c>prev</c> of the entry that the event stands in).
    /// </summary>
    public static byte[] Text(Json.Map stored, Digest before)
    {
        ArgumentNullException.ThrowIfNull(stored);
        (string, Json)[] act = [.. stored.Items.Where(p => p.Key != SignatureKey).Select(p => (p.Key, p.Value))];
        return CanonicalJson.Write(Json.MapOf(("act", Json.MapOf(act)), ("book", new Json.Text(before.ToString()))));
    }

    /// <summary>Signs an event.</summary>
    /// <param name="make">The event with an act in it.</param>
    /// <param name="key">Who stands by it.</param>
    /// <param name="before">The digest of the shop book's last entry.</param>
    public static ShopEvent Sign(Func<SignedAct, ShopEvent> make, UnlockedKey key, Digest before)
    {
        ArgumentNullException.ThrowIfNull(make);
        ArgumentNullException.ThrowIfNull(key);
        SignedAct unsigned = new(key.Person.Id, "");
        byte[] text = Text(ShopEventFormat.Write(make(unsigned)), before);
        return make(unsigned with { Signature = key.SignBase64(text) });
    }

    /// <summary>True when it is this person's signature over the stored event.</summary>
    public bool IsBy(Person person, Json.Map stored, Digest before)
    {
        ArgumentNullException.ThrowIfNull(person);
        byte[] signature = new byte[Signature.Length];
        return person.Id == By
            && Convert.TryFromBase64String(Signature, signature, out int length)
            && PersonKeys.Verify(person, Text(stored, before), signature.AsSpan(0, length));
    }
}
