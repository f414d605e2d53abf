using ProcRunner.People;
using ProcRunner.Trail;

namespace ProcRunner.Shop;

/// <summary>How the shop book's signed events are written: each with who signed, <c>by</c>, and the <c>signature</c>.</summary>
internal static class SignedActFormat
{
    private const string Id = "id";
    private const string Key = "key";
    private const string Wrapped = "wrapped";
    private const string Certificate = "certificate";

    /// <summary>The event as it stands in an entry.</summary>
    public static Json.Map Write(ShopEvent shopEvent) =>
        shopEvent switch
        {
            ShopEvent.PersonChanged e => Map(
                "person changed",
                e.Act,
                (Id, T(e.Id)),
                ("name", T(e.Name)),
                ("role", T(RoleWord.Of(e.Role))),
                (Certificate, T(e.Certificate))
            ),
            ShopEvent.PersonLeft e => Map("person left", e.Act, (Id, T(e.Id))),
            ShopEvent.PinSet e => Map(
                "pin set",
                e.Act,
                (Id, T(e.Id)),
                (Wrapped, ShopEventFormat.WriteWrapped(e.WrappedKey))
            ),
            ShopEvent.PinReset e => Map(
                "pin reset",
                e.Act,
                (Id, T(e.Id)),
                (Key, T(e.PublicKey)),
                (Wrapped, ShopEventFormat.WriteWrapped(e.WrappedKey)),
                (Certificate, T(e.Certificate))
            ),
            ShopEvent.FirstLeadAnew e => Map(
                "first lead anew",
                e.Act,
                (Id, T(e.Person.Id)),
                ("name", T(e.Person.Name)),
                ("role", T(RoleWord.Of(e.Person.Role))),
                (Key, T(e.Person.PublicKey)),
                (Wrapped, ShopEventFormat.WriteWrapped(e.Person.WrappedKey)),
                (Certificate, T(e.Person.Certificate)),
                ("reason", T(e.Reason))
            ),
            ShopEvent.IdleSet e => Map("idle set", e.Act, ("minutes", new Json.Whole(e.Minutes))),
            ShopEvent.ContactSet e => Map("contact set", e.Act, ("contact", T(e.Contact))),
            _ => throw new ArgumentOutOfRangeException(nameof(shopEvent)),
        };

    /// <summary>The event that a map holds; null when it holds none of these, or not whole.</summary>
    public static ShopEvent? Read(Json.Map map)
    {
        if (map.TextAt("by") is not { } by || map.TextAt("signature") is not { } signature)
        {
            return null;
        }

        SignedAct act = new(by, signature);
        string? id = map.TextAt(Id);
        string? certificate = map.TextAt(Certificate);
        WrappedKey? wrapped = ShopEventFormat.ReadWrapped(map[Wrapped]);
        return map.TextAt("e") switch
        {
            "person changed"
                when id is not null
                    && certificate is not null
                    && map.TextAt("name") is { } name
                    && RoleWord.Parse(map.TextAt("role")) is { } role => new ShopEvent.PersonChanged(
                id,
                name,
                role,
                certificate,
                act
            ),
            "person left" when id is not null => new ShopEvent.PersonLeft(id, act),
            "pin set" when id is not null && wrapped is not null => new ShopEvent.PinSet(id, wrapped, act),
            "pin reset"
                when id is not null && wrapped is not null && certificate is not null && map.TextAt(Key) is { } key =>
                new ShopEvent.PinReset(id, key, wrapped, certificate, act),
            "first lead anew"
                when id is not null
                    && wrapped is not null
                    && certificate is not null
                    && map.TextAt(Key) is { } key
                    && map.TextAt("name") is { } name
                    && RoleWord.Parse(map.TextAt("role")) is { } role
                    && map.TextAt("reason") is { } reason => new ShopEvent.FirstLeadAnew(
                new(id, name, role, key, wrapped, id, certificate),
                reason,
                act
            ),
            "idle set" when map.WholeAt("minutes") is { } minutes and >= 0 => new ShopEvent.IdleSet(minutes, act),
            "contact set" when map.TextAt("contact") is { } contact => new ShopEvent.ContactSet(contact, act),
            _ => null,
        };
    }

    private static Json.Map Map(string name, SignedAct act, params ReadOnlySpan<(string, Json)> pairs) =>
        Json.MapOf([("e", T(name)), ("by", T(act.By)), ("signature", T(act.Signature)), .. pairs]);

    private static Json.Text T(string text) => new(text);
}
