using System.CommandLine;
using ProcRunner.People;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary>The verbs under <c>people</c> that change who may sign. PINs are asked, never given as words of the call.</summary>
internal static class PeopleChanges
{
    private const string IdHelp = "short and for good: it stands in every entry of the trail";
    private const string NameHelp = "the name that is printed beside a signature";
    private const string LeadHelp = "id of the lead who does it, whose PIN is asked";

    /// <summary><c>people found</c>.</summary>
    public static Command Found()
    {
        Argument<string> shop = new("shop") { Description = "the shop's name" };
        Argument<string> id = new("id") { Description = IdHelp };
        Argument<string> name = new("name") { Description = NameHelp };
        Command verb = new("found", "make a store, with its first lead") { shop, id, name };
        verb.SetAction(parsed =>
            FoundShop(StoreOption.OfShop(parsed), parsed.GetValue(shop)!, parsed.GetValue(id)!, parsed.GetValue(name)!)
        );
        return verb;
    }

    /// <summary><c>people add</c>.</summary>
    public static Command Add()
    {
        Argument<string> id = new("id") { Description = IdHelp };
        Argument<string> name = new("name") { Description = NameHelp };
        Option<string> role = RoleOption();
        role.DefaultValueFactory = _ => "operator";
        Option<string?> by = ByOption.Create(LeadHelp);
        Command verb = new("add", "add a person; their new PIN is asked, then the lead's") { id, name, role, by };
        verb.SetAction(parsed =>
        {
            string wanted = parsed.GetValue(id)!;
            return ByLead(
                StoreOption.OfShop(parsed),
                parsed.GetValue(by),
                (shop, lead) => Added(shop, lead, wanted, parsed.GetValue(name)!, parsed.GetValue(role)!),
                _ => $"{wanted} may sign from now on."
            );
        });
        return verb;
    }

    /// <summary><c>people role</c>.</summary>
    public static Command Role()
    {
        Argument<string> id = new("id") { Description = "whose" };
        Option<string> role = RoleOption();
        role.Required = true;
        Option<string?> name = new("--name") { Description = "a new name to print", HelpName = "name" };
        Option<string?> by = ByOption.Create(LeadHelp);
        Command verb = new("role", "change a person's role, and name if need be") { id, role, name, by };
        verb.SetAction(parsed =>
        {
            string wanted = parsed.GetValue(id)!;
            return ByLead(
                StoreOption.OfShop(parsed),
                parsed.GetValue(by),
                (shop, lead) => Recertified(shop, lead, wanted, parsed.GetValue(role)!, parsed.GetValue(name)),
                shop => $"{wanted} is {RoleWord.Of(shop.People[wanted].Role)} from now on."
            );
        });
        return verb;
    }

    /// <summary><c>people pin</c>.</summary>
    public static Command Pin()
    {
        Argument<string> id = new("id") { Description = "whose" };
        Command verb = new("pin", "change a PIN: the old one is asked, then the new one") { id };
        verb.SetAction(parsed =>
        {
            string wanted = parsed.GetValue(id)!;
            return ShopChange.Write(
                StoreOption.OfShop(parsed),
                "people pin",
                shop => PinChanged(shop, wanted),
                _ => $"{wanted} has a new PIN."
            );
        });
        return verb;
    }

    /// <summary><c>people retire</c>.</summary>
    public static Command Retire()
    {
        Argument<string> id = new("id") { Description = "who leaves" };
        Option<string?> by = ByOption.Create(LeadHelp);
        Command verb = new("retire", "a person leaves; what they signed stays good") { id, by };
        verb.SetAction(parsed =>
        {
            string wanted = parsed.GetValue(id)!;
            return ByLead(
                StoreOption.OfShop(parsed),
                parsed.GetValue(by),
                (shop, lead) => Retired(shop, lead, wanted),
                _ => $"{wanted} can't sign any more."
            );
        });
        return verb;
    }

    private static Option<string> RoleOption()
    {
        Option<string> role = new("--role") { Description = "operator, trainee or lead" };
        role.AcceptOnlyFromAmong("operator", "trainee", "lead");
        return role;
    }

    private static int FoundShop(string folder, string shopName, string id, string name)
    {
        if (shopName == DemoShop.Name)
        {
            return Say.Usage("That is the demo shop's name.", "Choose another.");
        }

        // Before anything is asked or made: a founded store without a lead would be of no use.
        if (StoreFolder.Exists(folder))
        {
            return Say.Usage($"There is a store in this folder already. ({folder})", "");
        }

        (string? pin, string fault) = HiddenInput.AskNew(id, Console.Error);
        if (pin is null)
        {
            return Say.Usage(fault, "");
        }

        PersonMaking making = PersonKeys.Create(
            id,
            name,
            People.Role.Lead,
            pin,
            PersonKeys.DefaultRounds,
            Machine.Entropy,
            null
        );
        if (making is not PersonMaking.Made made)
        {
            return Say.No(InWords(making, id));
        }

        (LocalStore? opened, fault) = ShopFloor.Found(folder, shopName, "people found");
        if (opened is null)
        {
            return Say.Usage(fault, "");
        }

        using LocalStore store = opened;
        return ShopChange.Append(
            store,
            id,
            new ShopEvent.PersonAdded(made.Person),
            _ =>
                $"The store of {shopName} is made in {folder}; {name} is its first lead. Their key, to be kept on paper: {PersonKeys.Fingerprint(made.Person)}"
        );
    }

    private static int ByLead(
        string folder,
        string? by,
        Func<ShopState, Certifier, (ShopEvent? Happened, string Fault)> decide,
        Func<ShopState, string> done
    ) =>
        ShopChange.Write(
            folder,
            "people",
            shop =>
            {
                (Person? lead, string fault) = ByOption.Pick(shop, by, lead: true);
                if (lead is null)
                {
                    return ("", null, fault);
                }

                (ShopEvent? happened, fault) = decide(shop, new Certifier(lead, ""));
                return (lead.Id, happened, fault);
            },
            done
        );

    private static (ShopEvent? Happened, string Fault) Added(
        ShopState shop,
        Certifier lead,
        string id,
        string name,
        string roleWord
    )
    {
        if (shop.People.ContainsKey(id))
        {
            return (null, $"There is somebody called {id} already; an id is never used twice.");
        }

        (string? pin, string fault) = HiddenInput.AskNew(id, Console.Error);
        if (pin is null)
        {
            return (null, fault);
        }

        PersonMaking making = PersonKeys.Create(
            id,
            name,
            RoleWord.Parse(roleWord)!.Value,
            pin,
            PersonKeys.DefaultRounds,
            Machine.Entropy,
            WithPin(lead)
        );
        return making is PersonMaking.Made made
            ? (new ShopEvent.PersonAdded(made.Person), "")
            : (null, InWords(making, lead.Lead.Id));
    }

    private static (ShopEvent? Happened, string Fault) Recertified(
        ShopState shop,
        Certifier lead,
        string id,
        string roleWord,
        string? name
    )
    {
        if (!shop.People.TryGetValue(id, out Person? person))
        {
            return (null, $"There is nobody called {id}.");
        }

        Role role = RoleWord.Parse(roleWord)!.Value;
        string[] vouchedFor = [.. shop.People.Values.Where(p => p.CertifiedBy == id && p.Id != id).Select(p => p.Id)];
        if (person.IsRoot)
        {
            return (null, $"{id} is the shop's first lead, on whose key all others hang, and stays one.");
        }

        if (role == People.Role.Lead && person.Role != People.Role.Lead)
        {
            return (
                null,
                $"A lead's PIN is longer, so nobody becomes one: add {person.Name} as a lead under a new id."
            );
        }

        if (role != People.Role.Lead && vouchedFor.Length > 0)
        {
            return (
                null,
                $"{id} vouches as a lead for {string.Join(", ", vouchedFor)}: first have another lead set their roles anew (people role)."
            );
        }

        PersonMaking making = PersonKeys.Recertify(person, name ?? person.Name, role, WithPin(lead));
        return making is PersonMaking.Made made
            ? (new ShopEvent.PersonAdded(made.Person), "")
            : (null, InWords(making, lead.Lead.Id));
    }

    private static (ShopEvent? Happened, string Fault) Retired(ShopState shop, Certifier lead, string id)
    {
        if (!shop.People.TryGetValue(id, out Person? person) || person.RetiredAt is not null)
        {
            return (null, $"There is nobody called {id} here.");
        }

        bool othersLead = shop.People.Values.Any(p => p.Id != id && p.Role == People.Role.Lead && p.RetiredAt is null);
        if (!othersLead)
        {
            return (null, $"{id} is the last lead: without one nobody can be added and nothing be released.");
        }

        Certifier known = WithPin(lead);
        return PersonKeys.TrySign(known.Lead, known.Pin, []) is SigningResult.Made
            ? (new ShopEvent.PersonRetired(id), "")
            : (null, InWords(new PersonMaking.WrongPin(), lead.Lead.Id));
    }

    private static (string By, ShopEvent? Happened, string Fault) PinChanged(ShopState shop, string id)
    {
        if (!shop.People.TryGetValue(id, out Person? person) || person.RetiredAt is not null)
        {
            return ("", null, $"There is nobody called {id} here.");
        }

        string old = HiddenInput.Ask($"Old PIN of {id}: ", Console.Error) ?? "";
        (string? pin, string fault) = HiddenInput.AskNew(id, Console.Error);
        if (pin is null)
        {
            return ("", null, fault);
        }

        PersonMaking making = PersonKeys.ChangePin(person, old, pin, PersonKeys.DefaultRounds, Machine.Entropy);
        return making is PersonMaking.Made made
            ? (id, new ShopEvent.PinChanged(id, made.Person.WrappedKey), "")
            : ("", null, InWords(making, id));
    }

    private static Certifier WithPin(Certifier lead) =>
        lead with
        {
            Pin = HiddenInput.Ask($"PIN of {lead.Lead.Id} (lead): ", Console.Error) ?? "",
        };

    private static string InWords(PersonMaking making, string whosePin) =>
        making switch
        {
            PersonMaking.BadPin bad => PinRule.InWords(bad.Fault),
            PersonMaking.WrongPin => $"That is not the PIN of {whosePin}.",
            PersonMaking.NotALead => "Only a lead who is still here can do that.",
            _ => "An id and a name aren't empty and have no control characters.",
        };
}
