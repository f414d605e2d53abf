using ProcRunner.People;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Lines of forms that ask for PINs and for a lead.</summary>
internal static class PinFields
{
    /// <summary>A new PIN, checked for the role at once.</summary>
    public static Field New(Func<Role> role, string label = "PIN") =>
        new(label, FieldKind.Pin)
        {
            Hint = () =>
                role() == Role.Lead
                    ? "Six digits or more: a lead's PIN can concede and scrap."
                    : "Four digits or more. It is asked for at every sign-off; nobody can look it up.",
            Fault = pin => PinRule.Check(role(), pin) is { } fault ? PinRule.InWords(fault) : null,
        };

    /// <summary>The same PIN once more.</summary>
    public static Field Again(Field first) =>
        new("PIN once more", FieldKind.Pin)
        {
            Fault = pin => pin == first.Text ? null : "That isn't the same PIN. / goes back to type it anew.",
        };

    /// <summary>A lead, by number; not asked where there is only one.</summary>
    public static Field Lead(ShopSession session) =>
        new("lead", FieldKind.Choice)
        {
            Hint = () => "Which lead stands by this.",
            Choices = () => [.. session.Desk.Leads.Select(NameAndId)],
            IsAsked = () => session.Desk.Leads.Count != 1,
        };

    /// <summary>The PIN of the lead chosen.</summary>
    public static Field LeadPin(ShopSession session, Field lead) =>
        new("lead's PIN", FieldKind.Pin) { Hint = () => $"PIN of {session.NameOf(LeadOf(session, lead))}." };

    /// <summary>The id of the lead chosen, or of the only one there is; empty when there is none.</summary>
    public static string LeadOf(ShopSession session, Field lead) =>
        session.Desk.Leads.ElementAtOrDefault(Math.Max(0, lead.Index))?.Id ?? "";

    private static string NameAndId(Person person) => $"{person.Name} ({person.Id})";
}
