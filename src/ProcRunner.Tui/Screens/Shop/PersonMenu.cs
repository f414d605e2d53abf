using ProcRunner.People;
using ProcRunner.Tui.Screens.Parts;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>What can be changed about a person.</summary>
internal static class PersonMenu
{
    /// <summary>The menu.</summary>
    public static Screen Of(ShopSession session, string id) =>
        new MenuScreen(session, session.NameOf(id), () => About(session, id), () => Items(session, id));

    private static string About(ShopSession session, string id)
    {
        Person person = session.Store.Shop.People[id];
        string vouched =
            person.IsRoot && session.Store.Shop.Roots is { Count: > 1 } roots && id == roots[^1].Lead.Id
                ? "The first lead since the shop began anew; nobody before vouches for this key."
            : person.IsRoot ? "A first lead: other keys hang on this one."
            : $"Vouched for by {session.NameOf(person.CertifiedBy)}.";
        TimeSpan wait = session.Desk.Pins.Left(id);
        string waits =
            wait > TimeSpan.Zero ? $" Wrong PINs were typed: the next is tried in {PinGate.InWords(wait)}." : "";
        string left = person.RetiredAt is null ? "" : " Has left: what was signed before stays good.";
        return $"{RoleWord.Of(person.Role)}, id {person.Id}. {vouched}{left}{waits} Fingerprint of the key, as on the records: {PersonKeys.Fingerprint(person)}";
    }

    private static List<MenuItem> Items(ShopSession session, string id)
    {
        Person person = session.Store.Shop.People[id];
        if (person.RetiredAt is not null)
        {
            return [];
        }

        List<MenuItem> items = [MenuItem.To("change the PIN", () => new ChangePinForm(session, id))];
        if (!person.IsRoot)
        {
            items.Add(MenuItem.To("change name or role (a lead)", () => new ChangePersonForm(session, id)));
        }

        items.Add(
            MenuItem.To(
                person.Role == Role.Lead
                    ? "PIN forgotten: a new one (another lead)"
                    : "PIN forgotten: a new one (a lead)",
                () => new ResetPinForm(session, id)
            )
        );
        items.Add(MenuItem.To("has left the shop (a lead)", () => new RetireForm(session, id)));
        return items;
    }
}
