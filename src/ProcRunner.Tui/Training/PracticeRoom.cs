using ProcRunner.Lessons;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Training;

/// <summary>
/// The practice room: a store of its own, with the demo's invented people and the gauges of a practice setup. Its PINs are
/// public and its heads exist nowhere: nothing signed there is worth anything.
/// </summary>
internal static class PracticeRoom
{
    /// <summary>The store's name, by which it is told from a shop's.</summary>
    public const string Name = "Practice room (invented)";

    /// <summary>What stands as the bench in every entry written in a practice room, so that each is marked by itself.</summary>
    public static string Bench => $"PRACTICE {Environment.MachineName}";

    /// <summary>True for a practice room, whatever its folder is called.</summary>
    public static bool Is(ShopState shop) => shop.Name == Name;

    /// <summary>Opens the room, and makes it when it isn't there.</summary>
    /// <param name="folder">Its folder; a store in it that is no practice room is left alone.</param>
    /// <param name="setup">Whose gauges are in it.</param>
    public static (LocalStore? Store, string Fault) Open(string folder, PracticeSetup setup)
    {
        const string Purpose = "practice";
        (LocalStore? store, string fault) = StoreFolder.Exists(folder)
            ? ShopFloor.Open(folder, Purpose)
            : ShopFloor.Found(folder, Name, Purpose);
        if (store is null)
        {
            return (null, fault);
        }

        if (!Is(store.Shop))
        {
            fault =
                $"{folder} is the store of {store.Shop.Name}, not a practice room. Lessons never touch it: name another folder.";
            store.Dispose();
            return (null, fault);
        }

        return store.Shop.People.Count > 0
            ? (store, "")
            : DemoShop.Furnish(store, setup.Gauges.Select(g => g.Gauge), setup.Readout);
    }
}
