using ProcRunner.People;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Text;
using ProcRunner.Trail;
using ProcRunner.Tui.Demo;

namespace ProcRunner.Tui.Shell;

/// <summary>
/// What is done to the shop book by hand: people, their PINs, gauges, the readout. Every method writes and gives null, or
/// writes nothing and gives the reason, in words.
/// </summary>
/// <param name="store">The store, held for writing.</param>
/// <param name="entropy">Randomness for keys.</param>
/// <param name="rounds">PBKDF2 rounds for a new PIN.</param>
/// <param name="time">The clock; null: the machine's.</param>
internal sealed class ShopDesk(
    LocalStore store,
    EntropySource entropy,
    int rounds = PersonKeys.DefaultRounds,
    TimeProvider? time = null
)
{
    /// <summary>Where every PIN is tried.</summary>
    public PinGate Pins { get; } = PinGate.Of(store, time ?? Machine.Time);

    /// <summary>The longest idle time that can be set, in minutes.</summary>
    public const long MostIdleMinutes = 24 * 60;

    /// <summary>The longest address and telephone: two lines on the record.</summary>
    public const int MostContact = 160;

    /// <summary>The shop as it stands.</summary>
    public ShopState Shop => store.Shop;

    /// <summary>True when the last reason was the disk's, not the person's.</summary>
    public bool DiskFailed { get; private set; }

    /// <summary>The people who are here, by name.</summary>
    public IReadOnlyList<Person> Present =>
        [.. Shop.People.Values.Where(p => p.RetiredAt is null).OrderBy(p => p.Name, StringComparer.OrdinalIgnoreCase)];

    /// <summary>The leads who are here, by name.</summary>
    public IReadOnlyList<Person> Leads => [.. Present.Where(p => p.Role == Role.Lead)];

    /// <summary>Makes a store with its first lead; without a good lead no store is made.</summary>
    /// <param name="folder">A folder that is empty or isn't there.</param>
    /// <param name="shopName">The shop's name.</param>
    /// <param name="leadName">The first lead's name.</param>
    /// <param name="pin">The first lead's PIN.</param>
    /// <param name="rounds">PBKDF2 rounds.</param>
    /// <param name="leadId">The first lead's id; null: made of the name.</param>
    /// <returns>The store, held; or why there is none, and whether that is the disk's fault.</returns>
    public static (LocalStore? Store, string Fault, bool OfDisk) Found(
        string folder,
        string shopName,
        string leadName,
        string pin,
        int rounds = PersonKeys.DefaultRounds,
        string? leadId = null
    )
    {
        string name = Tidy(leadName);
        string id = leadId is null ? ProposeId(name, ShopState.Empty) : Tidy(leadId);
        if (Tidy(shopName) is "" or DemoShop.Name)
        {
            return (null, "A shop needs a name, and not the demo shop's.", false);
        }

        PersonMaking making = PersonKeys.Create(id, name, Role.Lead, pin, rounds, Machine.Entropy, null);
        if (making is not PersonMaking.Made made)
        {
            return (null, InWords(making, id), false);
        }

        (LocalStore? store, string fault) = ShopFloor.Found(folder, Tidy(shopName), "run");
        if (store is null)
        {
            return (null, fault, true);
        }

        ShopDesk desk = new(store, Machine.Entropy, rounds);
        if (desk.Append(id, new ShopEvent.PersonAdded(made.Person)) is { } notWritten)
        {
            store.Dispose();
            return (null, notWritten, true);
        }

        return (store, "", false);
    }

    /// <summary>Adds the first lead of a store that has nobody.</summary>
    public string? AddFirstLead(string name, string pin)
    {
        string id = ProposeId(Tidy(name), Shop);
        return Shop.RootId is not null
            ? "The shop has its first lead."
            : Keep(id, PersonKeys.Create(id, Tidy(name), Role.Lead, pin, rounds, entropy, null));
    }

    /// <summary>Adds a person, certified by a lead.</summary>
    public string? AddPerson(string id, string name, Role role, string pin, string lead, string leadPin)
    {
        string tidyId = Tidy(id);
        if (Shop.People.Keys.Any(known => string.Equals(known, tidyId, StringComparison.OrdinalIgnoreCase)))
        {
            return $"There is somebody with the id {tidyId} already. An id is never given twice.";
        }

        return PinRule.Check(role, pin) is { } weak
            ? PinRule.InWords(weak)
            : ByLead(
                lead,
                leadPin,
                key =>
                    Keep(key.Person.Id, PersonKeys.CreateCertified(tidyId, Tidy(name), role, pin, rounds, entropy, key))
            );
    }

    /// <summary>Gives a person another name or role; somebody who becomes a lead gets a new PIN, and with it a new key.</summary>
    public string? ChangePerson(string id, string name, Role role, string lead, string leadPin, string newPin = "")
    {
        if (PresentOf(id) is not { } person)
        {
            return Nobody(id);
        }

        if (person.IsRoot)
        {
            return $"{person.Name} is the first lead, on whose key all others hang, and stays one under this name.";
        }

        if (person.Role == Role.Lead && role != Role.Lead && Leads.Count == 1)
        {
            return "This is the only lead here.";
        }

        bool becomesLead = role == Role.Lead && person.Role != Role.Lead;
        return becomesLead && PinRule.Check(role, newPin) is { } weak
            ? PinRule.InWords(weak)
            : ByLead(lead, leadPin, key => Changed(person, Tidy(name), role, becomesLead ? newPin : null, key));
    }

    /// <summary>Retires a person; what they signed stays good.</summary>
    public string? Retire(string id, string lead, string leadPin)
    {
        if (PresentOf(id) is not { } person)
        {
            return Nobody(id);
        }

        return person.Role == Role.Lead && Leads.Count == 1
            ? "This is the only lead here: add another lead first."
            : ByLead(lead, leadPin, key => Act(key, act => new ShopEvent.PersonLeft(person.Id, act)));
    }

    /// <summary>Puts a person's key behind another PIN.</summary>
    public string? ChangePin(string id, string oldPin, string newPin)
    {
        if (PresentOf(id) is not { } person)
        {
            return Nobody(id);
        }

        if (PinRule.Check(person.Role, newPin) is { } weak)
        {
            return PinRule.InWords(weak);
        }

        using UnlockedKey? key = Pins.TryUnlock(person, oldPin, out string fault);
        if (key is null)
        {
            return fault;
        }

        WrappedKey wrapped = PersonKeys.Rewrap(key, newPin, rounds, entropy);
        return Act(key, act => new ShopEvent.PinSet(person.Id, wrapped, act));
    }

    /// <summary>Gives a person a new key behind a new PIN, by a lead; what the old key signed stays good.</summary>
    public string? ResetPin(string id, string newPin, string lead, string leadPin)
    {
        if (PresentOf(id) is not { } person)
        {
            return Nobody(id);
        }

        if (id == lead)
        {
            return "Nobody resets their own PIN: it is changed with the old one, or another lead resets it.";
        }

        return PinRule.Check(person.Role, newPin) is { } weak
            ? PinRule.InWords(weak)
            : ByLead(lead, leadPin, key => Append(key.Person.Id, Reset(person, newPin, key)));
    }

    /// <summary>
    /// Names a new first lead, because no lead can sign any more. No PIN is asked; the shop book says for ever that nobody
    /// before vouches for them.
    /// </summary>
    public string? BeginAnew(string id, string name, string pin, string reason)
    {
        string tidyId = Tidy(id);
        if (Shop.People.Keys.Any(known => string.Equals(known, tidyId, StringComparison.OrdinalIgnoreCase)))
        {
            return $"There is somebody with the id {tidyId} already. A new first lead has an id of their own.";
        }

        if (Shop.RootId is null)
        {
            return "The shop has no first lead yet, so there is none to replace.";
        }

        if (Tidy(reason).Length == 0)
        {
            return "Say why no lead can sign any more: it stands in the shop book for ever.";
        }

        PersonMaking making = PersonKeys.Create(tidyId, Tidy(name), Role.Lead, pin, rounds, entropy, null);
        if (making is not PersonMaking.Made { Person: var person })
        {
            return InWords(making, tidyId);
        }

        using UnlockedKey own = PersonKeys.TryUnlock(person, pin)!;
        return Act(own, act => new ShopEvent.FirstLeadAnew(person, Tidy(reason), act));
    }

    /// <summary>Sets the minutes without a key after which the screen asks who works; 0: never.</summary>
    public string? SetIdle(long minutes, string lead, string leadPin) =>
        minutes is < 0 or > MostIdleMinutes
            ? string.Create(
                System.Globalization.CultureInfo.InvariantCulture,
                $"Minutes from 1 to {MostIdleMinutes}, or 0 for never."
            )
            : ByLead(lead, leadPin, key => Act(key, act => new ShopEvent.IdleSet(minutes, act)));

    /// <summary>Sets what stands on the records of where the shop is found and called; empty: nothing does.</summary>
    public string? SetContact(string contact, string lead, string leadPin) =>
        Tidy(contact).Length > MostContact
            ? string.Create(
                System.Globalization.CultureInfo.InvariantCulture,
                $"Address and telephone in one line of up to {MostContact} characters."
            )
            : ByLead(lead, leadPin, key => Act(key, act => new ShopEvent.ContactSet(Tidy(contact), act)));

    /// <summary>Takes a gauge into use.</summary>
    /// <param name="gauge">The gauge; its id is no other's.</param>
    /// <param name="person">Who says so.</param>
    public string? AddGauge(Gauge gauge, string person)
    {
        bool taken = Shop.Gauges.Keys.Any(id => string.Equals(id, Tidy(gauge.Id), StringComparison.OrdinalIgnoreCase));
        return taken
            ? $"There is a gauge {Tidy(gauge.Id)} already."
            : FaultOf(gauge) ?? Append(person, new ShopEvent.GaugeAdded(Tidied(gauge)));
    }

    /// <summary>Changes what is known of a gauge: calibrated, repaired, renamed.</summary>
    public string? ChangeGauge(Gauge gauge, string person)
    {
        if (!Shop.Gauges.ContainsKey(gauge.Id))
        {
            return $"There is no gauge {SafeText.Show(gauge.Id)} here.";
        }

        return FaultOf(gauge) ?? Append(person, new ShopEvent.GaugeChanged(Tidied(gauge)));
    }

    /// <summary>Sets up the machine's readout.</summary>
    public string? SetReadout(Readout readout, string person) =>
        readout.Step <= 0
            ? "The readout's smallest step is above 0."
            : Append(person, new ShopEvent.ReadoutSet(readout));

    /// <summary>An id for a name that nobody in the shop has: its last word in small letters, numbered when taken.</summary>
    public static string ProposeId(string name, ShopState shop)
    {
        string last = name.Split(' ', StringSplitOptions.RemoveEmptyEntries).LastOrDefault() ?? "";
        string stem = string.Concat(last.ToLowerInvariant().Where(char.IsAsciiLetterOrDigit));
        stem = stem.Length == 0 ? "person" : stem[..Math.Min(stem.Length, 20)];
        string id = stem;
        for (int next = 2; shop.People.ContainsKey(id); next++)
        {
            id = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{stem}{next}");
        }

        return id;
    }

    /// <summary>A name or id as it is kept.</summary>
    public static string Tidy(string text) => SafeText.Clean(text).Trim();

    private static string WrongPin(string whose) => $"That is not the PIN of {whose}.";

    private Person? PresentOf(string id) =>
        Shop.People.TryGetValue(id, out Person? person) && person.RetiredAt is null ? person : null;

    private Person? LeadOf(string id) => PresentOf(id) is { Role: Role.Lead } lead ? lead : null;

    private string? ByLead(string id, string pin, Func<UnlockedKey, string?> change)
    {
        if (LeadOf(id) is not { } lead)
        {
            return NoLead(id);
        }

        using UnlockedKey? key = Pins.TryUnlock(lead, pin, out string fault);
        return key is null ? fault : change(key);
    }

    private string? Act(UnlockedKey by, Func<SignedAct, ShopEvent> make) => Append(by.Person.Id, Signed(by, make));

    private ShopEvent Signed(UnlockedKey by, Func<SignedAct, ShopEvent> make) =>
        SignedAct.Sign(make, by, Shop.Mark.Digest);

    private ShopEvent Reset(Person person, string newPin, UnlockedKey lead)
    {
        Person made = PersonKeys.Reset(person, newPin, rounds, entropy, lead);
        return Signed(
            lead,
            act => new ShopEvent.PinReset(made.Id, made.PublicKey, made.WrappedKey, made.Certificate, act)
        );
    }

    private string? Changed(Person person, string name, Role role, string? newPin, UnlockedKey lead)
    {
        PersonMaking making = PersonKeys.Recertify(person, name, role, lead);
        if (making is not PersonMaking.Made { Person: var changed })
        {
            return InWords(making, lead.Person.Id);
        }

        ShopEvent named = Signed(
            lead,
            act => new ShopEvent.PersonChanged(changed.Id, changed.Name, changed.Role, changed.Certificate, act)
        );
        return newPin is null
            ? Append(lead.Person.Id, named)
            : Append(lead.Person.Id, named, Reset(changed, newPin, lead));
    }

    private string? Keep(string by, PersonMaking making) =>
        making is PersonMaking.Made made ? Append(by, new ShopEvent.PersonAdded(made.Person)) : InWords(making, by);

    private static string? FaultOf(Gauge gauge)
    {
        if (Tidy(gauge.Id).Length == 0 || Tidy(gauge.Name).Length == 0 || Tidy(gauge.Kind).Length == 0)
        {
            return "A gauge has an id, a name and a kind.";
        }

        bool sizes = gauge.Resolution.Value > 0 && gauge.Uncertainty.Value >= 0 && gauge.Turn is not { Value: <= 0 };
        bool alike =
            gauge.Uncertainty.Dimension == gauge.Resolution.Dimension
            && (gauge.Turn is not { } turn || turn.Dimension == gauge.Resolution.Dimension);
        return !sizes ? "A gauge's resolution and turn are above 0, its uncertainty isn't below 0."
            : !alike ? "Resolution, uncertainty and turn of a gauge are of one kind: all lengths, or all forces."
            : null;
    }

    private static Gauge Tidied(Gauge gauge) =>
        gauge with
        {
            Id = Tidy(gauge.Id),
            Name = Tidy(gauge.Name),
            Kind = Tidy(gauge.Kind),
        };

    private string? Append(string by, params ReadOnlySpan<ShopEvent> events)
    {
        AppendResult result = store.AppendShop(by, events);
        DiskFailed = result is AppendResult.Failed;
        return result switch
        {
            AppendResult.Failed failed => $"NOT WRITTEN: {failed.Why}. Nothing was recorded.",
            AppendResult.Refused refused => refused.Why,
            _ => null,
        };
    }

    private static string InWords(PersonMaking making, string whosePin) =>
        making switch
        {
            PersonMaking.BadPin bad => PinRule.InWords(bad.Fault),
            PersonMaking.WrongPin => WrongPin(whosePin),
            PersonMaking.NotALead => "Only a lead who is here vouches for people.",
            _ => "A person has a name and an id.",
        };

    private static string Nobody(string id) => $"Nobody here is called {SafeText.Show(id)}.";

    private static string NoLead(string id) => $"{SafeText.Show(id)} is no lead of this shop.";
}
