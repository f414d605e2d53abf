using System.Collections.Immutable;
using System.Globalization;
using ProcRunner.People;
using ProcRunner.Quantities;
using ProcRunner.Trail;

namespace ProcRunner.Shop;

/// <summary>
/// How the shop book's events are written. The names and keys are a format: explicit, never renamed, old ones still read.
/// Each event is a map whose key <c>e</c> holds the event's name.
/// </summary>
/// <remarks>
/// <code>
/// shop founded      name
/// person added      id, name, role, key, wrapped {rounds, salt, nonce, sealed}, by, certificate
/// person changed    id, name, role, certificate, by, signature
/// person left       id, by, signature
/// person retired    id (no longer written)
/// pin set           id, wrapped, by, signature
/// pin changed       id, wrapped (no longer written)
/// pin reset         id, key, wrapped, certificate, by, signature
/// pin refused       id, tries
/// pin accepted      id
/// first lead anew   id, name, role, key, wrapped, certificate, reason, by, signature
/// idle set          minutes, by, signature
/// contact set       contact, by, signature
/// gauge added       id, name, kind, resolution, uncertainty, turn (or null), until (or null)
/// gauge changed     the same
/// readout set       unit, step, deeper, diameter, steps, preset
/// job opened        job, stamp, texts
/// job anchored      job, n, d, why
/// job closed out    job, n, d
/// torn tail found   of, file, length, d
/// book caught up    job
/// </code>
/// Quantities are texts with number and unit (<c>0.0005 in</c>), dates are ISO 8601, digests 64 hexadecimal digits.
/// </remarks>
public static class ShopEventFormat
{
    private const string Name = "e";

    /// <summary>The event as it stands in an entry.</summary>
    public static Json.Map Write(ShopEvent shopEvent) =>
        shopEvent switch
        {
            ShopEvent.ShopFounded e => Json.MapOf((Name, T("shop founded")), ("name", T(e.Name))),
            ShopEvent.PersonAdded e => WritePerson(e.Person),
            ShopEvent.PersonRetired e => Json.MapOf((Name, T("person retired")), ("id", T(e.Id))),
            ShopEvent.PinChanged e => Json.MapOf(
                (Name, T("pin changed")),
                ("id", T(e.Id)),
                ("wrapped", WriteWrapped(e.WrappedKey))
            ),
            ShopEvent.PersonChanged
            or ShopEvent.PersonLeft
            or ShopEvent.PinSet
            or ShopEvent.PinReset
            or ShopEvent.FirstLeadAnew
            or ShopEvent.IdleSet
            or ShopEvent.ContactSet => SignedActFormat.Write(shopEvent),
            ShopEvent.PinRefused e => Json.MapOf(
                (Name, T("pin refused")),
                ("id", T(e.Id)),
                ("tries", new Json.Whole(e.InARow))
            ),
            ShopEvent.PinAccepted e => Json.MapOf((Name, T("pin accepted")), ("id", T(e.Id))),
            ShopEvent.GaugeAdded e => WriteGauge("gauge added", e.Gauge),
            ShopEvent.GaugeChanged e => WriteGauge("gauge changed", e.Gauge),
            ShopEvent.ReadoutSet e => WriteReadout(e.Readout),
            ShopEvent.JobOpened e => Json.MapOf(
                (Name, T("job opened")),
                ("job", T(e.Job)),
                ("stamp", T(e.Stamp)),
                ("texts", new Json.List([.. e.Texts.Select(digest => (Json)T(digest.ToString()))]))
            ),
            ShopEvent.JobAnchored e => Json.MapOf(
                (Name, T("job anchored")),
                ("job", T(e.Job)),
                ("n", new Json.Whole(e.Sequence)),
                ("d", T(e.Digest.ToString())),
                ("why", T(AnchorWord.Of(e.Why)))
            ),
            ShopEvent.JobClosedOut e => Json.MapOf(
                (Name, T("job closed out")),
                ("job", T(e.Job)),
                ("n", new Json.Whole(e.Sequence)),
                ("d", T(e.Digest.ToString()))
            ),
            ShopEvent.TornTailFound e => Json.MapOf(
                (Name, T("torn tail found")),
                ("of", T(e.Of)),
                ("file", T(e.File)),
                ("length", new Json.Whole(e.Length)),
                ("d", T(e.Digest.ToString()))
            ),
            ShopEvent.BookCaughtUp e => Json.MapOf((Name, T("book caught up")), ("job", T(e.Job))),
            _ => throw new ArgumentOutOfRangeException(nameof(shopEvent)),
        };

    /// <summary>The event that a map holds; null when it holds none that this program knows.</summary>
    public static ShopEvent? Read(Json.Map map)
    {
        ArgumentNullException.ThrowIfNull(map);
        string? Text(string key) => map.TextAt(key);
        return Text(Name) switch
        {
            "shop founded" when Text("name") is { } name => new ShopEvent.ShopFounded(name),
            "person added" when ReadPerson(map) is { } person => new ShopEvent.PersonAdded(person),
            "person retired" when Text("id") is { } id => new ShopEvent.PersonRetired(id),
            "pin changed" when Text("id") is { } id && ReadWrapped(map["wrapped"]) is { } wrapped =>
                new ShopEvent.PinChanged(id, wrapped),
            "pin refused" when Text("id") is { } id && map.WholeAt("tries") is { } tries and >= 1 =>
                new ShopEvent.PinRefused(id, tries),
            "pin accepted" when Text("id") is { } id => new ShopEvent.PinAccepted(id),
            "gauge added" when ReadGauge(map) is { } gauge => new ShopEvent.GaugeAdded(gauge),
            "gauge changed" when ReadGauge(map) is { } gauge => new ShopEvent.GaugeChanged(gauge),
            "readout set" when ReadReadout(map) is { } readout => new ShopEvent.ReadoutSet(readout),
            "job opened"
                when Text("job") is { } job && Text("stamp") is { } stamp && ReadDigests(map["texts"]) is { } texts =>
                new ShopEvent.JobOpened(job, stamp, texts),
            "job anchored"
                when Text("job") is { } job
                    && map.WholeAt("n") is { } sequence
                    && Digest.Parse(Text("d")) is { } digest
                    && AnchorWord.Parse(Text("why")) is { } why => new ShopEvent.JobAnchored(
                job,
                sequence,
                digest,
                why
            ),
            "job closed out"
                when Text("job") is { } job
                    && map.WholeAt("n") is { } sequence
                    && Digest.Parse(Text("d")) is { } digest => new ShopEvent.JobClosedOut(job, sequence, digest),
            "torn tail found"
                when Text("of") is { } of
                    && Text("file") is { } file
                    && map.WholeAt("length") is { } length
                    && Digest.Parse(Text("d")) is { } digest => new ShopEvent.TornTailFound(of, file, length, digest),
            "book caught up" when Text("job") is { } job => new ShopEvent.BookCaughtUp(job),
            _ => SignedActFormat.Read(map),
        };
    }

    private static Json.Text T(string text) => new(text);

    private static Json.Map WritePerson(Person person) =>
        Json.MapOf(
            (Name, T("person added")),
            ("id", T(person.Id)),
            ("name", T(person.Name)),
            ("role", T(RoleWord.Of(person.Role))),
            ("key", T(person.PublicKey)),
            ("wrapped", WriteWrapped(person.WrappedKey)),
            ("by", T(person.CertifiedBy)),
            ("certificate", T(person.Certificate))
        );

    private static Person? ReadPerson(Json.Map map) =>
        map.TextAt("id") is { } id
        && map.TextAt("name") is { } name
        && RoleWord.Parse(map.TextAt("role")) is { } role
        && map.TextAt("key") is { } key
        && ReadWrapped(map["wrapped"]) is { } wrapped
        && map.TextAt("by") is { } by
        && map.TextAt("certificate") is { } certificate
            ? new(id, name, role, key, wrapped, by, certificate)
            : null;

    internal static Json.Map WriteWrapped(WrappedKey key) =>
        Json.MapOf(
            ("rounds", new Json.Whole(key.Rounds)),
            ("salt", T(key.Salt)),
            ("nonce", T(key.Nonce)),
            ("sealed", T(key.Sealed))
        );

    internal static WrappedKey? ReadWrapped(Json? json) =>
        json is Json.Map map
        && map.WholeAt("rounds") is { } rounds and >= 1 and <= int.MaxValue
        && map.TextAt("salt") is { } salt
        && map.TextAt("nonce") is { } nonce
        && map.TextAt("sealed") is { } box
            ? new((int)rounds, salt, nonce, box)
            : null;

    private static Json.Map WriteGauge(string name, Gauge gauge) =>
        Json.MapOf(
            (Name, T(name)),
            ("id", T(gauge.Id)),
            ("name", T(gauge.Name)),
            ("kind", T(gauge.Kind)),
            ("resolution", T(gauge.Resolution.ToString())),
            ("uncertainty", T(gauge.Uncertainty.ToString())),
            ("turn", gauge.Turn is { } turn ? T(turn.ToString()) : Json.Nothing),
            (
                "until",
                gauge.CalibratedUntil is { } day
                    ? T(day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture))
                    : Json.Nothing
            )
        );

    private static Gauge? ReadGauge(Json.Map map)
    {
        Quantity turn = default;
        DateOnly until = default;
        bool hasTurn = map["turn"] is Json.Text;
        bool hasUntil = map["until"] is Json.Text;
        return
            map.TextAt("id") is { } id
            && map.TextAt("name") is { } name
            && map.TextAt("kind") is { } kind
            && Quantity.TryParse(map.TextAt("resolution"), out Quantity resolution)
            && Quantity.TryParse(map.TextAt("uncertainty"), out Quantity uncertainty)
            && (!hasTurn || Quantity.TryParse(map.TextAt("turn"), out turn))
            && (!hasUntil || TryDate(map.TextAt("until"), out until))
            ? new(id, name, kind, resolution, uncertainty, hasTurn ? turn : null, hasUntil ? until : null)
            : null;
    }

    private static bool TryDate(string? text, out DateOnly date) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out date);

    private static Json.Map WriteReadout(Readout readout) =>
        Json.MapOf(
            (Name, T("readout set")),
            ("unit", T(readout.Unit.Symbol)),
            ("step", T(readout.Step.ToString(CultureInfo.InvariantCulture))),
            ("deeper", new Json.Flag(readout.GrowsDeeper)),
            ("diameter", new Json.Flag(readout.ShowsDiameter)),
            ("steps", new Json.Flag(readout.StepMode)),
            ("preset", new Json.Flag(readout.Preset))
        );

    private static Readout? ReadReadout(Json.Map map) =>
        map.TextAt("unit") is { } symbol
        && Units.Find(symbol) is { } unit
        && decimal.TryParse(
            map.TextAt("step"),
            NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out decimal step
        )
        && step > 0
        && map.FlagAt("deeper") is { } deeper
        && map.FlagAt("diameter") is { } diameter
        && map.FlagAt("steps") is { } steps
        && map.FlagAt("preset") is { } preset
            ? new(unit, step, deeper, diameter, steps, preset)
            : null;

    private static ImmutableArray<Digest>? ReadDigests(Json? json)
    {
        if (json is not Json.List list)
        {
            return null;
        }

        var digests = ImmutableArray.CreateBuilder<Digest>(list.Items.Length);
        foreach (Json item in list.Items)
        {
            if (item is not Json.Text text || Digest.Parse(text.Value) is not { } digest)
            {
                return null;
            }

            digests.Add(digest);
        }

        return digests.DrainToImmutable();
    }
}
