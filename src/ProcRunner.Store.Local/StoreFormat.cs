using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>The file that says that a folder is a store, and of which format.</summary>
internal static class StoreFormat
{
    private const int Current = 1;

    public static byte[] Bytes { get; } =
        CanonicalJson.Write(Json.MapOf(("store", new Json.Text("procrunner")), ("format", new Json.Whole(Current))));

    /// <summary>Null when the folder is a store of the current format.</summary>
    public static StoreOpening? Check(StorePaths paths)
    {
        if (!File.Exists(paths.Format))
        {
            return new StoreOpening.NoStore();
        }

        return File.ReadAllBytes(paths.Format).AsSpan().SequenceEqual(Bytes) ? null : new StoreOpening.UnknownFormat();
    }
}
