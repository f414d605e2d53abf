using ProcRunner.Store.Local;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary>A store with its search index, for a verb that asks and writes nothing.</summary>
internal static class IndexedStore
{
    /// <summary>Gives the store to what asks it; the exit status.</summary>
    /// <param name="folder">The store's folder.</param>
    /// <param name="ask">Asks, and gives the exit status.</param>
    public static int Ask(string folder, Func<StoreReader, SearchIndex, int> ask)
    {
        (StoreReader? reader, string fault) = ShopFloor.Read(folder);
        if (reader is null)
        {
            return Say.Usage(fault, "");
        }

        SearchIndex index = ShopFloor.IndexOf(reader);
        index.Progress = new Progress(Machine.Time, Console.Error, "jobs read").Report;
        int found = index.All().Length;
        return index.Trouble is not { } trouble || found > 0
            ? ask(reader, index)
            : Say.Usage($"The jobs can't be searched: {trouble}.", "Try again; nothing is lost with the index.");
    }
}
