using ProcRunner.People;

namespace ProcRunner.Runs;

/// <summary>Whether a mark is a known person's and its signature holds.</summary>
internal static class Marks
{
    /// <summary>Why a mark doesn't hold, or null when it does.</summary>
    public static Decision.Refused? Fault(Deciding on, Mark mark, Func<byte[]> signed, bool byLead)
    {
        if (!on.Shop.People.TryGetValue(mark.Person, out Person? person) || person.RetiredAt is not null)
        {
            return Deciding.No($"{mark.Person} is nobody who may sign here.", "See who may: procrunner people");
        }

        if (byLead && person.Role != Role.Lead)
        {
            return Deciding.No($"{person.Name} is no lead; this needs one.", "Ask a lead to sign with their own PIN.");
        }

        if (on.PracticeMark is { } word)
        {
            return mark.Signature == word ? null : Deciding.No($"The practice mark of {person.Name} doesn't hold.");
        }

        return person.Name == mark.Name && PersonKeys.Verify(person, signed(), Bytes(mark.Signature))
            ? null
            : Deciding.No($"The signature of {person.Name} doesn't hold.", "Sign again.");
    }

    /// <summary>True for a trainee, whose mark needs a lead's beside it.</summary>
    public static bool IsTrainee(Deciding on, Mark mark) =>
        on.Shop.People.TryGetValue(mark.Person, out Person? person) && person.Role == Role.Trainee;

    private static byte[] Bytes(string base64)
    {
        byte[] buffer = new byte[base64.Length];
        return Convert.TryFromBase64String(base64, buffer, out int written) ? buffer[..written] : [];
    }
}
