using System.CommandLine;
using ProcRunner.People;
using ProcRunner.Shop;

namespace ProcRunner.Tui.Commands;

/// <summary>Who does it.</summary>
internal static class ByOption
{
    /// <summary>A new one for a verb.</summary>
    public static Option<string?> Create(string description) =>
        new("--by") { Description = description, HelpName = "person" };

    /// <summary>The person named, or the only one there is; null with what to do.</summary>
    public static (Person? Person, string Fault) Pick(ShopState shop, string? given, bool lead)
    {
        Person[] present = [.. shop.People.Values.Where(p => p.RetiredAt is null && (!lead || p.Role == Role.Lead))];
        Person? picked = given is null && present.Length == 1 ? present[0] : present.FirstOrDefault(p => p.Id == given);
        string kind = lead ? "a lead" : "somebody";
        return picked is not null
            ? (picked, "")
            : (
                null,
                $"Say who does it: --by with the id of {kind} here ({string.Join(", ", present.Select(p => p.Id))})."
            );
    }
}
