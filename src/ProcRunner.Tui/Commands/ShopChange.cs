using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary>A change to the shop book by a verb: open the store, decide, write, say so.</summary>
internal static class ShopChange
{
    /// <summary>Writes what a decision gives.</summary>
    /// <param name="folder">The store.</param>
    /// <param name="purpose">What for, in words for whoever is kept out meanwhile.</param>
    /// <param name="decide">Who does it and what happened, or why it can't be.</param>
    /// <param name="done">What to say when it is on disk.</param>
    /// <returns>The exit status.</returns>
    public static int Write(
        string folder,
        string purpose,
        Func<ShopState, (string By, ShopEvent? Happened, string Fault)> decide,
        Func<ShopState, string> done
    )
    {
        (LocalStore? opened, string fault) = ShopFloor.Open(folder, purpose);
        if (opened is null)
        {
            return Say.Usage(fault, PeopleVerb.HowToFound);
        }

        using LocalStore store = opened;
        (string by, ShopEvent? happened, fault) = decide(store.Shop);
        return happened is null ? Say.No(fault) : Append(store, by, happened, done);
    }

    /// <summary>Writes an event to an open store and says so; the exit status.</summary>
    public static int Append(LocalStore store, string by, ShopEvent happened, Func<ShopState, string> done)
    {
        switch (store.AppendShop(by, happened))
        {
            case AppendResult.Written:
                Say.Line(done(store.Shop));
                return Status.Done;
            case AppendResult.Failed failed:
                return Say.Usage($"NOT WRITTEN: {failed.Why} Nothing was recorded.", "");
            default:
                return Say.Usage("Nothing was recorded.", "");
        }
    }
}
