namespace ProcRunner.People;

/// <summary>
/// What a PIN must be. Who has the shop's files can try PINs at leisure, so a lead's, which can concede and scrap, is
/// longer: at 600,000 rounds four digits last minutes, six digits days.
/// </summary>
public static class PinRule
{
    private const int FewestDigits = 4;
    private const int FewestDigitsOfALead = 6;
    private const int MostDigits = 64;

    /// <summary>What is wrong with a PIN for this role, or null.</summary>
    public static PinFault? Check(Role role, ReadOnlySpan<char> pin)
    {
        if (pin.ContainsAnyExceptInRange('0', '9'))
        {
            return PinFault.NotDigits;
        }

        return pin.Length < FewestDigits ? PinFault.UnderFour
            : role == Role.Lead && pin.Length < FewestDigitsOfALead ? PinFault.LeadUnderSix
            : pin.Length > MostDigits ? PinFault.TooLong
            : null;
    }

    /// <summary>The fault in plain words.</summary>
    public static string InWords(PinFault fault) =>
        fault switch
        {
            PinFault.NotDigits => "A PIN is made of the digits 0 to 9 alone.",
            PinFault.UnderFour => "A PIN has four digits or more.",
            PinFault.LeadUnderSix => "A lead's PIN has six digits or more.",
            _ => "A PIN has 64 digits at most.",
        };
}
