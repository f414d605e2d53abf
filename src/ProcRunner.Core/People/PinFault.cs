namespace ProcRunner.People;

/// <summary>Why a PIN can't be taken.</summary>
public enum PinFault
{
    /// <summary>It holds something other than the digits 0 to 9.</summary>
    NotDigits,

    /// <summary>Fewer than four digits.</summary>
    UnderFour,

    /// <summary>A lead's PIN has fewer than six digits.</summary>
    LeadUnderSix,

    /// <summary>More than 64 digits.</summary>
    TooLong,
}
