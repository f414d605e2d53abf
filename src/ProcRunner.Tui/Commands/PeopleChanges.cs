using System.CommandLine;
using ProcRunner.People;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Screens.Shop;
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
                (desk, lead) => Added(desk, lead, wanted, parsed.GetValue(name)!, RoleIn(parsed.GetValue(role)!)),
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
        Command verb = new("role", "change a person's role, and name if need be; who becomes a lead gets a new PIN")
        {
            id,
            role,
            name,
            by,
        };
        verb.SetAction(parsed =>
        {
            string wanted = parsed.GetValue(id)!;
            return ByLead(
                StoreOption.OfShop(parsed),
                parsed.GetValue(by),
                (desk, lead) => Changed(desk, lead, wanted, parsed.GetValue(name), RoleIn(parsed.GetValue(role)!)),
                desk => $"{wanted} is {RoleWord.Of(desk.Shop.People[wanted].Role)} from now on."
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
                desk => PinChanged(desk, wanted),
                _ => $"{wanted} has a new PIN."
            );
        });
        return verb;
    }

    /// <summary><c>people reset</c>.</summary>
    public static Command Reset()
    {
        Argument<string> id = new("id") { Description = "who has forgotten their PIN" };
        Option<string?> by = ByOption.Create(LeadHelp);
        Command verb = new("reset", "a new PIN in place of a forgotten one; what was signed stays good") { id, by };
        verb.SetAction(parsed =>
        {
            string wanted = parsed.GetValue(id)!;
            return ByLead(
                StoreOption.OfShop(parsed),
                parsed.GetValue(by),
                (desk, lead) => WithNewPin(wanted, pin => desk.ResetPin(wanted, pin, lead, PinOf(lead))),
                _ => $"{wanted} has a new PIN and a new key."
            );
        });
        return verb;
    }

    /// <summary><c>people idle</c>.</summary>
    public static Command Idle()
    {
        Argument<long> minutes = new("minutes") { Description = "without a key; 0: never" };
        Option<string?> by = ByOption.Create(LeadHelp);
        Command verb = new("idle", "after how long without a key the screen asks who works") { minutes, by };
        verb.SetAction(parsed =>
            ByLead(
                StoreOption.OfShop(parsed),
                parsed.GetValue(by),
                (desk, lead) => desk.SetIdle(parsed.GetValue(minutes), lead, PinOf(lead)),
                desk => $"Sign-out: {IdleForm.InWords(desk.Shop.IdleMinutes)}."
            )
        );
        return verb;
    }

    /// <summary><c>people begin-anew</c>.</summary>
    public static Command BeginAnew()
    {
        Argument<string> id = new("id") { Description = IdHelp };
        Argument<string> name = new("name") { Description = NameHelp };
        Option<string> reason = new("--because")
        {
            Description = "why no lead can sign any more; it stands in the shop book for ever",
            HelpName = "reason",
            Required = true,
        };
        Command verb = new(
            "begin-anew",
            "name a new first lead, when no lead can sign any more; verify tells it for ever"
        )
        {
            id,
            name,
            reason,
        };
        verb.SetAction(parsed =>
        {
            string wanted = parsed.GetValue(id)!;
            return ShopChange.Write(
                StoreOption.OfShop(parsed),
                "people begin-anew",
                desk =>
                    WithNewPin(
                        wanted,
                        pin => desk.BeginAnew(wanted, parsed.GetValue(name)!, pin, parsed.GetValue(reason)!)
                    ),
                desk =>
                    $"{wanted} is the first lead from here on, not vouched for by the one before; what was signed stays good. Their key, to be kept on paper: {PersonKeys.Fingerprint(desk.Shop.People[wanted])}"
            );
        });
        return verb;
    }

    /// <summary><c>people contact</c>.</summary>
    public static Command Contact()
    {
        Argument<string> text = new("text")
        {
            Description = "address and telephone in one line; an empty text takes them off again",
        };
        Option<string?> by = ByOption.Create(LeadHelp);
        Command verb = new("contact", "where the shop is found and called, for its records from now on") { text, by };
        verb.SetAction(parsed =>
            ByLead(
                StoreOption.OfShop(parsed),
                parsed.GetValue(by),
                (desk, lead) => desk.SetContact(parsed.GetValue(text)!, lead, PinOf(lead)),
                desk =>
                    desk.Shop.Contact.Length > 0
                        ? $"On records from now on: {desk.Shop.Name}, {desk.Shop.Contact}"
                        : "No address or telephone stands on records from now on."
            )
        );
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
                (desk, lead) => desk.Retire(wanted, lead, PinOf(lead)),
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

    private static Role RoleIn(string word) => RoleWord.Parse(word)!.Value;

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

        (LocalStore? founded, fault, bool ofDisk) = ShopDesk.Found(folder, shopName, name, pin, leadId: id);
        if (founded is null)
        {
            return ofDisk ? Say.Usage(fault, "") : Say.No(fault);
        }

        using LocalStore store = founded;
        Person lead = store.Shop.People[store.Shop.RootId!];
        Say.Line(
            $"The store of {store.Shop.Name} is made in {folder}; {lead.Name} is its first lead. Their key, to be kept on paper: {PersonKeys.Fingerprint(lead)}"
        );
        return Status.Done;
    }

    private static int ByLead(
        string folder,
        string? by,
        Func<ShopDesk, string, string?> change,
        Func<ShopDesk, string> done
    ) =>
        ShopChange.Write(
            folder,
            "people",
            desk =>
            {
                (Person? lead, string fault) = ByOption.Pick(desk.Shop, by, lead: true);
                return lead is null ? fault : change(desk, lead.Id);
            },
            done
        );

    private static string? WithNewPin(string whose, Func<string, string?> change)
    {
        (string? pin, string fault) = HiddenInput.AskNew(whose, Console.Error);
        return pin is null ? fault : change(pin);
    }

    private static string? Added(ShopDesk desk, string lead, string id, string name, Role role)
    {
        (string? pin, string fault) = HiddenInput.AskNew(id, Console.Error);
        return pin is null ? fault : desk.AddPerson(id, name, role, pin, lead, PinOf(lead));
    }

    // Without a new name the person keeps theirs; nobody of that id is the desk's to say.
    private static string? Changed(ShopDesk desk, string lead, string id, string? name, Role role)
    {
        Person? known = desk.Shop.People.GetValueOrDefault(id);
        string called = name ?? known?.Name ?? "";
        bool becomesLead = role == People.Role.Lead && known is not null && known.Role != People.Role.Lead;
        return becomesLead
            ? WithNewPin(id, pin => desk.ChangePerson(id, called, role, lead, PinOf(lead), pin))
            : desk.ChangePerson(id, called, role, lead, PinOf(lead));
    }

    private static string? PinChanged(ShopDesk desk, string id)
    {
        string old = HiddenInput.Ask($"Old PIN of {id}: ", Console.Error) ?? "";
        (string? pin, string fault) = HiddenInput.AskNew(id, Console.Error);
        return pin is null ? fault : desk.ChangePin(id, old, pin);
    }

    private static string PinOf(string lead) => HiddenInput.Ask($"PIN of {lead} (lead): ", Console.Error) ?? "";
}
