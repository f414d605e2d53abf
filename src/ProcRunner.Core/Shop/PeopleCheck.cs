using System.Globalization;
using ProcRunner.People;
using ProcRunner.Trail;

namespace ProcRunner.Shop;

/// <summary>
/// Whether every change to the shop's people and settings was signed for, by somebody who might then, with the key they
/// had then. Walks the shop book from its first entry, so that what a key vouched for stays good when it is replaced.
/// </summary>
public sealed class PeopleCheck
{
    private readonly List<PeopleFinding> _findings = [];
    private ShopState _shop = ShopState.Empty;

    private readonly bool _isExcerpt;

    private PeopleCheck(bool isExcerpt) => _isExcerpt = isExcerpt;

    /// <summary>Checks a shop book.</summary>
    /// <param name="book">Its entries in order, with their digests.</param>
    /// <param name="isExcerpt">
    /// True for a book from which the sealed keys were left out: a change that was signed for together with one is held by its
    /// certificate alone.
    /// </param>
    public static IReadOnlyList<PeopleFinding> Of(
        IEnumerable<(TrailEntry Entry, Digest Digest)> book,
        bool isExcerpt = false
    )
    {
        ArgumentNullException.ThrowIfNull(book);
        PeopleCheck check = new(isExcerpt);
        foreach ((TrailEntry entry, Digest digest) in book)
        {
            check.Look(entry, digest);
        }

        return check._findings;
    }

    // Events of one entry are looked at one after the other, each on what the ones before it came to.
    private void Look(TrailEntry entry, Digest digest)
    {
        foreach (Json.Map stored in entry.Events)
        {
            if (ShopEventFormat.Read(stored) is { } happened)
            {
                if (Fault(happened, stored, entry.Previous) is { } fault)
                {
                    Say(entry, true, fault);
                }
                else if (happened is ShopEvent.FirstLeadAnew anew)
                {
                    Say(
                        entry,
                        false,
                        $"from here a new first lead, {anew.Person.Name} ({anew.Person.Id}), not vouched for by the one before: whoever held the store's folder named them. Reason: {anew.Reason}. Keys that they vouch for hang on this key alone, {PersonKeys.Fingerprint(anew.Person)}; what was signed before still hangs on the one before"
                    );
                }
            }

            _shop = _shop.After(entry with { Events = [stored] }, digest);
        }
    }

    private string? Fault(ShopEvent happened, Json.Map stored, Digest before) =>
        happened switch
        {
            ShopEvent.PersonAdded e => Added(e.Person),
            ShopEvent.PersonChanged e => ByLead(e.Act, stored, before, $"the change of {NameOf(e.Id)}")
                ?? Certified(e.Id, p => p with { Name = e.Name, Role = e.Role }, e.Act, e.Certificate),
            ShopEvent.PersonLeft e => ByLead(e.Act, stored, before, $"that {NameOf(e.Id)} left"),
            ShopEvent.PinReset e => ByLead(e.Act, stored, before, $"the new key of {NameOf(e.Id)}")
                ?? Certified(e.Id, p => p with { PublicKey = e.PublicKey }, e.Act, e.Certificate),
            ShopEvent.PinSet e => Signed(e.Act, stored, before, $"the new PIN of {NameOf(e.Id)}", p => p.Id == e.Id),
            ShopEvent.IdleSet e => ByLead(e.Act, stored, before, "the setting"),
            ShopEvent.ContactSet e => ByLead(e.Act, stored, before, "the shop's address and telephone"),
            ShopEvent.FirstLeadAnew e => Anew(e, stored, before),
            ShopEvent.PersonRetired e =>
                $"that {NameOf(e.Id)} left is signed by nobody: it may have been put in by hand",
            ShopEvent.PinChanged e =>
                $"the new PIN of {NameOf(e.Id)} is signed for by nobody: it may have been put in by hand",
            _ => null,
        };

    private string? Added(Person person)
    {
        if (_shop.People.ContainsKey(person.Id))
        {
            return $"{person.Name} ({person.Id}) was added under an id that was somebody's already";
        }

        if (person.IsRoot)
        {
            return _shop.RootId is not null ? $"{person.Name} ({person.Id}) was added as a second first lead"
                : PersonKeys.IsCertified(person, person) ? null
                : $"the first lead's key doesn't certify itself";
        }

        return
            _shop.People.TryGetValue(person.CertifiedBy, out Person? lead)
            && lead.RetiredAt is null
            && PersonKeys.IsCertified(person, lead)
            ? null
            : $"the key of {person.Name} ({person.Id}) isn't certified by a lead of the shop: what they signed proves nothing";
    }

    private string? Anew(ShopEvent.FirstLeadAnew e, Json.Map stored, Digest before) =>
        _shop.People.ContainsKey(e.Person.Id) ? $"a new first lead has the id of somebody else, {e.Person.Id}"
        : e.Person.Role == Role.Lead
        && PersonKeys.IsCertified(e.Person, e.Person)
        && IsSigned(e.Act, e.Person, stored, before)
            ? null
        : "the new first lead's key doesn't sign for itself";

    private string? Certified(string id, Func<Person, Person> change, SignedAct act, string certificate)
    {
        if (!_shop.People.TryGetValue(id, out Person? person))
        {
            return $"nobody is called {id}";
        }

        Person changed = change(person) with { CertifiedBy = act.By, Certificate = certificate };
        return PersonKeys.IsCertified(changed, _shop.People[act.By])
            ? null
            : $"the key of {changed.Name} ({id}) isn't certified by the lead who signed for it";
    }

    private string? ByLead(SignedAct act, Json.Map stored, Digest before, string what) =>
        Signed(act, stored, before, what, p => p.Role == Role.Lead);

    private string? Signed(SignedAct act, Json.Map stored, Digest before, string what, Func<Person, bool> might) =>
        !_shop.People.TryGetValue(act.By, out Person? person) ? $"{what} is signed by nobody whom the shop book knew"
        : person.RetiredAt is not null || !might(person) ? $"{what} is signed by {person.Name}, who might not"
        : IsSigned(act, person, stored, before) ? null
        : $"{what} isn't signed with the key of {person.Name}: it was forged, changed or moved";

    private bool IsSigned(SignedAct act, Person person, Json.Map stored, Digest before) =>
        (_isExcerpt && stored["wrapped"] is not null) || act.IsBy(person, stored, before);

    private string NameOf(string id) => _shop.People.TryGetValue(id, out Person? person) ? $"{person.Name} ({id})" : id;

    private void Say(TrailEntry entry, bool broken, string text) =>
        _findings.Add(
            new(
                entry.Sequence,
                broken,
                string.Create(CultureInfo.InvariantCulture, $"Shop book, entry {entry.Sequence}: {text}.")
            )
        );
}
