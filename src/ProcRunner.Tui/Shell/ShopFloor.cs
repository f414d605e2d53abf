using ProcRunner.Store.Local;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Shell;

/// <summary>Opens stores for this program: with its clock, its randomness and its index.</summary>
internal static class ShopFloor
{
    /// <summary>Opens a store for writing; what is written in a practice room is marked, whatever verb opens it.</summary>
    public static (LocalStore? Store, string Fault) Open(string folder, string purpose)
    {
        (LocalStore? store, string fault) = Open(folder, purpose, null);
        if (store is null || !PracticeRoom.Is(store.Shop))
        {
            return (store, fault);
        }

        store.Dispose();
        return Open(folder, purpose, PracticeRoom.Bench);
    }

    private static (LocalStore? Store, string Fault) Open(string folder, string purpose, string? bench)
    {
        StoreReader? reader = null;
        StoreOpening opening = StoreFolder.Open(
            folder,
            purpose,
            Machine.Time,
            Machine.Entropy,
            bench,
            JobProjection.Over(() => reader!)
        );
        return Taken(opening, folder, ref reader);
    }

    /// <summary>Makes a store.</summary>
    public static (LocalStore? Store, string Fault) Found(string folder, string name, string purpose)
    {
        StoreReader? reader = null;
        StoreOpening opening = StoreFolder.Found(
            folder,
            name,
            purpose,
            Machine.Time,
            Machine.Entropy,
            name == PracticeRoom.Name ? PracticeRoom.Bench : null,
            JobProjection.Over(() => reader!)
        );
        return Taken(opening, folder, ref reader);
    }

    /// <summary>Opens a store for reading, beside whoever writes.</summary>
    public static (StoreReader? Reader, string Fault) Read(string folder)
    {
        (StoreReader? reader, StoreOpening? fault) = StoreReader.Open(folder);
        return (reader, fault is null ? "" : InWords(fault, folder));
    }

    /// <summary>The search index over a store that is read.</summary>
    public static SearchIndex IndexOf(StoreReader reader) =>
        reader.Index(JobProjection.Over(() => reader), looksOnce: true);

    private static (LocalStore? Store, string Fault) Taken(StoreOpening opening, string folder, ref StoreReader? reader)
    {
        if (opening is not StoreOpening.Opened opened)
        {
            return (null, InWords(opening, folder));
        }

        reader = opened.Store.Reader;
        return (opened.Store, "");
    }

    private static string InWords(StoreOpening opening, string folder) => $"{opening.InWords()} ({folder})";
}
