using ProcRunner.Store.Local;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary>A change to the shop book by a verb: open the store, have it done at the desk, say so.</summary>
internal static class ShopChange
{
    /// <summary>Makes a change.</summary>
    /// <param name="folder">The store.</param>
    /// <param name="purpose">What for, in words for whoever is kept out meanwhile.</param>
    /// <param name="change">Makes it; gives null, or why it can't be.</param>
    /// <param name="done">What to say when it is on disk.</param>
    /// <returns>The exit status.</returns>
    public static int Write(string folder, string purpose, Func<ShopDesk, string?> change, Func<ShopDesk, string> done)
    {
        (LocalStore? opened, string fault) = ShopFloor.Open(folder, purpose);
        if (opened is null)
        {
            return Say.Usage(fault, PeopleVerb.HowToFound);
        }

        using LocalStore store = opened;
        ShopDesk desk = new(store, Machine.Entropy);
        if (change(desk) is { } why)
        {
            return desk.DiskFailed ? Say.Usage(why, "") : Say.No(why);
        }

        Say.Line(done(desk));
        return Status.Done;
    }
}
