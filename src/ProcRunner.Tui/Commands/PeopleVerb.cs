using System.CommandLine;
using ProcRunner.People;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Trail;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary><c>people</c>: who may sign.</summary>
internal static class PeopleVerb
{
    /// <summary>What to do while there is no store.</summary>
    public const string HowToFound = "To make one, with its first lead: procrunner people found SHOP ID NAME";

    /// <summary>The verb with its own verbs.</summary>
    public static Command Create()
    {
        Option<bool> json = JsonOption.Create();
        Command verb = new("people", "list who may sign; found a store, add people, change their PIN or role")
        {
            json,
            PeopleChanges.Found(),
            PeopleChanges.Add(),
            PeopleChanges.Role(),
            PeopleChanges.Pin(),
            PeopleChanges.Reset(),
            PeopleChanges.Retire(),
            PeopleChanges.Idle(),
            PeopleChanges.Contact(),
            PeopleChanges.BeginAnew(),
        };
        verb.SetAction(parsed => List(StoreOption.ToRead(parsed), parsed.GetValue(json)));
        return verb;
    }

    private static int List(string folder, bool json)
    {
        (StoreReader? reader, string fault) = ShopFloor.Read(folder);
        if (reader is null)
        {
            return Say.Usage(fault, HowToFound);
        }

        ShopState shop = reader.ReadShop().Shop;
        if (json)
        {
            Say.Json(Json.ListOf([.. shop.People.Values.Select(Entry)]));
            return Status.Done;
        }

        Say.Line(shop.Contact.Length > 0 ? $"{shop.Name}, {shop.Contact}" : shop.Name);
        int id = shop.People.Keys.Select(k => k.Length).DefaultIfEmpty(0).Max();
        foreach (ShopRoot anew in shop.Roots.Skip(1))
        {
            Say.Line(
                $"The shop began anew on {JobListing.Minute(anew.At)} UTC with {anew.Lead.Name} as its first lead, not vouched for by the one before: {anew.Reason}"
            );
        }

        PinGate pins = new(() => shop, (_, _) => new AppendResult.Refused("nothing is written"), Machine.Time);
        foreach (Person person in shop.People.Values)
        {
            string left = person.RetiredAt is { } at ? $", left {JobListing.Minute(at)} UTC" : "";
            TimeSpan wait = pins.Left(person.Id);
            string waits = wait > TimeSpan.Zero ? $"; wrong PINs: the next is tried in {PinGate.InWords(wait)}" : "";
            string root = person.IsRoot ? ", a first lead" : $", certified by {person.CertifiedBy}";
            Say.Line($"{person.Id.PadRight(id)}  {RoleWord.Of(person.Role), -8}  {person.Name}{root}{left}{waits}");
            Say.Line($"{new string(' ', id)}  key {PersonKeys.Fingerprint(person)}");
        }

        return Status.Done;
    }

    private static Json.Map Entry(Person person) =>
        Json.MapOf(
            ("id", new Json.Text(person.Id)),
            ("name", new Json.Text(person.Name)),
            ("role", new Json.Text(RoleWord.Of(person.Role))),
            ("certified-by", new Json.Text(person.CertifiedBy)),
            ("key", new Json.Text(PersonKeys.Fingerprint(person))),
            ("left", person.RetiredAt is { } at ? new Json.Text(JobListing.Second(at)) : Json.Nothing)
        );
}
