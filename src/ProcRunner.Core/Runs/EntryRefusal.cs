using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>The refusal of an entry that can't be read or is doubtful, where no question can be kept.</summary>
internal static class EntryRefusal
{
    public static Decision.Refused Of(EntryResult entry, string expected) =>
        entry switch
        {
            EntryResult.Unreadable bad => Deciding.No($"Read {bad.WhatWasRead}; expected {expected}.", bad.WhatToDo),
            EntryResult.Questioned doubt => Deciding.No(
                $"{doubt.Why} Expected {expected}.",
                [.. doubt.Meanings.Select(m => $"Type {m} if that is meant.")]
            ),
            _ => Deciding.No($"Expected {expected}."),
        };
}
