namespace ProcRunner.People;

/// <summary>
/// How long a person's PIN isn't tried after wrong ones: two slips cost nothing, then half a minute, doubling to a quarter
/// of an hour and no longer. At the machine a guesser gets four tries an hour and leaves each in the shop book; a prankster
/// keeps one person from signing for a quarter of an hour, and nobody else.
/// </summary>
public static class PinWait
{
    /// <summary>Wrong PINs in a row that cost no waiting.</summary>
    public const int Free = 2;

    /// <summary>The longest wait.</summary>
    public static TimeSpan Longest { get; } = TimeSpan.FromMinutes(15);

    private static readonly TimeSpan First = TimeSpan.FromSeconds(30);

    /// <summary>The whole wait after so many wrong PINs in a row.</summary>
    public static TimeSpan After(long inARow)
    {
        if (inARow <= Free)
        {
            return TimeSpan.Zero;
        }

        TimeSpan wait = First;
        for (long i = Free + 1; i < inARow && wait < Longest; i++)
        {
            wait *= 2;
        }

        return wait < Longest ? wait : Longest;
    }

    /// <summary>What is left of a wait of which so much has gone by; never below zero or above the whole wait.</summary>
    /// <param name="wrong">The wrong PINs; null: none.</param>
    /// <param name="gone">
    /// The time since the last one. A clock set back makes it negative, which counts as nothing gone: the wait begins anew and
    /// isn't longer than it ever was.
    /// </param>
    public static TimeSpan Left(WrongPins? wrong, TimeSpan gone)
    {
        TimeSpan whole = After(wrong?.InARow ?? 0);
        return gone <= TimeSpan.Zero ? whole
            : gone >= whole ? TimeSpan.Zero
            : whole - gone;
    }
}
