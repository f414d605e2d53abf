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
internal sealed class ShopDesk(LocalStore store, EntropySource entropy, int rounds = PersonKeys.DefaultRounds)
{
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

        return LeadOf(lead) is { } by
            ? Keep(by.Id, PersonKeys.Create(tidyId, Tidy(name), role, pin, rounds, entropy, new(by, leadPin)))
            : NoLead(lead);
    }

    /// <summary>Gives a person another name or role; nobody becomes a lead this way.</summary>
    public string? ChangePerson(string id, string name, Role role, string lead, string leadPin)
    {
        if (PresentOf(id) is not { } person)
        {
            return Nobody(id);
        }

        if (role == Role.Lead && person.Role != Role.Lead)
        {
            return "A lead's PIN is longer, so nobody becomes one: retire this id, then add the person as a lead.";
        }

        if (person.IsRoot)
        {
            return $"{person.Name} is the first lead, on whose key all others hang, and stays one under this name.";
        }

        if (person.Role == Role.Lead && role != Role.Lead && Leads.Count == 1)
        {
            return "This is the only lead here.";
        }

        // A certificate of somebody who is no lead counts for nothing.
        string[] vouchedFor = [.. Shop.People.Values.Where(p => p.CertifiedBy == id).Select(p => $"{p.Id} ({p.Name})")];
        if (role != Role.Lead && vouchedFor.Length > 0)
        {
            return $"{person.Name} vouches as a lead for {string.Join(", ", vouchedFor)}: first another lead confirms their roles.";
        }

        return LeadOf(lead) is { } by
            ? Keep(by.Id, PersonKeys.Recertify(person, Tidy(name), role, new(by, leadPin)))
            : NoLead(lead);
    }

    /// <summary>Retires a person; what they signed stays good.</summary>
    public string? Retire(string id, string lead, string leadPin)
    {
        if (PresentOf(id) is not { } person)
        {
            return Nobody(id);
        }

        if (person.Role == Role.Lead && Leads.Count == 1)
        {
            return "This is the only lead here: add another lead first.";
        }

        if (LeadOf(lead) is not { } by)
        {
            return NoLead(lead);
        }

        return PersonKeys.TrySign(by, leadPin, "retire"u8) is SigningResult.Made
            ? Append(by.Id, new ShopEvent.PersonRetired(person.Id))
            : WrongPin(by.Id);
    }

    /// <summary>Puts a person's key behind another PIN.</summary>
    public string? ChangePin(string id, string oldPin, string newPin)
    {
        if (PresentOf(id) is not { } person)
        {
            return Nobody(id);
        }

        PersonMaking making = PersonKeys.ChangePin(person, oldPin, newPin, rounds, entropy);
        return making is PersonMaking.Made made
            ? Append(person.Id, new ShopEvent.PinChanged(person.Id, made.Person.WrappedKey))
            : InWords(making, person.Id);
    }

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

    private string? Append(string by, ShopEvent happened)
    {
        AppendResult result = store.AppendShop(by, happened);
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
