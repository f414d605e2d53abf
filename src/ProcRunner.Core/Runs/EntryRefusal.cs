using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>The refusal of an entry that can't be read as what is expected.</summary>
internal static class EntryRefusal
{
    public static Decision.Refused Of(EntryResult entry, string expected) =>
        entry switch
        {
            EntryResult.Unreadable bad => Deciding.No($"Read {bad.WhatWasRead}; expected {expected}.", bad.WhatToDo),
            _ => Deciding.No($"Expected {expected}."),
        };
}
