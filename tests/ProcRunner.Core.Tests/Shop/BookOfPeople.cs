using System.Security.Cryptography;
using ProcRunner.People;
using ProcRunner.Shop;
using ProcRunner.Trail;

namespace ProcRunner.Tests.Shop;

/// <summary>A shop book that events are added to as the program adds them, each chained to the one before.</summary>
internal sealed class BookOfPeople
{
    public const string LeadPin = "123456";
    private const int Rounds = 10;

    public List<(TrailEntry Entry, Digest Digest)> Entries { get; } = [];

    public ShopState Shop { get; private set; } = ShopState.Empty;

    public Digest Last => Shop.Mark.Digest;

    public IReadOnlyList<PeopleFinding> Findings => PeopleCheck.Of(Entries);

    public static BookOfPeople WithLead()
    {
        BookOfPeople book = new();
        return book.Add(new ShopEvent.PersonAdded(Make("lead1", Role.Lead, LeadPin, null)));
    }

    public BookOfPeople Add(params ShopEvent[] events) => AddStored([.. events.Select(ShopEventFormat.Write)]);

    public BookOfPeople AddStored(params Json.Map[] stored)
    {
        TrailEntry entry = new()
        {
            Of = JobId.Shop,
            Sequence = Shop.Mark.Sequence + 1,
            Previous = Last,
            At = DateTimeOffset.UnixEpoch.AddMinutes(Entries.Count),
            Offset = TimeSpan.Zero,
            Operator = "",
            Bench = "b",
            Book = BookMark.None,
            Events = [.. stored],
        };
        Digest digest = TrailLine.DigestOf(TrailLine.Encode(entry));
        Entries.Add((entry, digest));
        Shop = Shop.After(entry, digest);
        return this;
    }

    public BookOfPeople AddPerson(string id, Role role, string pin, string lead = "lead1", string leadPin = LeadPin) =>
        Add(new ShopEvent.PersonAdded(Make(id, role, pin, new(Shop.People[lead], leadPin))));

    /// <summary>An event signed by a person, over the book as it is now.</summary>
    public ShopEvent Signed(string by, string pin, Func<SignedAct, ShopEvent> make)
    {
        using UnlockedKey key = PersonKeys.TryUnlock(Shop.People[by], pin)!;
        return SignedAct.Sign(make, key, Last);
    }

    public ShopEvent Left(string id, string by = "lead1", string pin = LeadPin) =>
        Signed(by, pin, act => new ShopEvent.PersonLeft(id, act));

    public ShopEvent Reset(string id, string newPin, string by = "lead1", string pin = LeadPin)
    {
        using UnlockedKey key = PersonKeys.TryUnlock(Shop.People[by], pin)!;
        Person made = PersonKeys.Reset(Shop.People[id], newPin, Rounds, RandomNumberGenerator.Fill, key);
        return SignedAct.Sign(
            act => new ShopEvent.PinReset(id, made.PublicKey, made.WrappedKey, made.Certificate, act),
            key,
            Last
        );
    }

    public ShopEvent Changed(string id, string name, Role role, string by = "lead1", string pin = LeadPin)
    {
        using UnlockedKey key = PersonKeys.TryUnlock(Shop.People[by], pin)!;
        Person made = ((PersonMaking.Made)PersonKeys.Recertify(Shop.People[id], name, role, key)).Person;
        return SignedAct.Sign(
            act => new ShopEvent.PersonChanged(id, made.Name, made.Role, made.Certificate, act),
            key,
            Last
        );
    }

    public ShopEvent Anew(string id, string pin, string reason)
    {
        Person lead = Make(id, Role.Lead, pin, null);
        using UnlockedKey key = PersonKeys.TryUnlock(lead, pin)!;
        return SignedAct.Sign(act => new ShopEvent.FirstLeadAnew(lead, reason, act), key, Last);
    }

    public static Person Make(string id, Role role, string pin, Certifier? certifier) =>
        (
            (PersonMaking.Made)
                PersonKeys.Create(id, "Name of " + id, role, pin, Rounds, RandomNumberGenerator.Fill, certifier)
        ).Person;
}
