using ProcRunner.People;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Lines of forms that ask for PINs and for a lead.</summary>
internal static class PinFields
{
    /// <summary>A new PIN, checked for the role at once.</summary>
    public static Field New(Func<Role> role, string label = "PIN", Func<bool>? isAsked = null) =>
        new(label, FieldKind.Pin)
        {
            Hint = () =>
                role() == Role.Lead
                    ? "Six digits or more: a lead's PIN can concede and scrap."
                    : "Four digits or more. It is asked for at every sign-off; nobody can look it up.",
            IsAsked = isAsked ?? (static () => true),
            Fault = pin => PinRule.Check(role(), pin) is { } fault ? PinRule.InWords(fault) : null,
        };

    /// <summary>The same PIN once more.</summary>
    public static Field Again(Field first, Func<bool>? isAsked = null) =>
        new("PIN once more", FieldKind.Pin)
        {
            IsAsked = isAsked ?? (static () => true),
            Fault = pin => pin == first.Text ? null : "That isn't the same PIN. / goes back to type it anew.",
        };

    /// <summary>A lead, by number; not asked where there is only one.</summary>
    public static Field Lead(ShopSession session, string except = "") =>
        new("lead", FieldKind.Choice)
        {
            Hint = () => "Which lead stands by this.",
            Choices = () => [.. Leads(session, except).Select(NameAndId)],
            IsAsked = () => Leads(session, except).Count > 1,
        };

    /// <summary>The PIN of the lead chosen.</summary>
    public static Field LeadPin(ShopSession session, Field lead, string except = "") =>
        new("lead's PIN", FieldKind.Pin)
        {
            Hint = () =>
                LeadOf(session, lead, except) is { Length: > 0 } id
                    ? $"PIN of {session.NameOf(id)}."
                    : "There is no other lead here who could.",
        };

    /// <summary>The id of the lead chosen, or of the only one there is; empty when there is none.</summary>
    public static string LeadOf(ShopSession session, Field lead, string except = "") =>
        Leads(session, except).ElementAtOrDefault(Math.Max(0, lead.Index))?.Id ?? "";

    private static IReadOnlyList<Person> Leads(ShopSession session, string except) =>
        [.. session.Desk.Leads.Where(p => p.Id != except)];

    private static string NameAndId(Person person) => $"{person.Name} ({person.Id})";
}
