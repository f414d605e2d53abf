using ProcRunner.Store.Local;
using ProcRunner.Trail;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Training;

/// <summary>A small file of the practice room: a value for each learner or job. Nothing of the trail hangs on it.</summary>
/// <param name="path">The file; where there is none or it can't be read, it is as good as empty.</param>
internal sealed class RoomFile(string path)
{
    /// <summary>What is kept under a key; null: nothing.</summary>
    public Json? this[string key] => Read()?[key];

    /// <summary>Keeps a value, on the disk before it returns; where it can't be written it is kept by nobody.</summary>
    /// <param name="key">The key.</param>
    /// <param name="value">The value; null takes away what is there.</param>
    public void Keep(string key, Json? value)
    {
        (string, Json)[] others =
        [
            .. (Read()?.Items ?? []).Where(entry => entry.Key != key).Select(entry => (entry.Key, entry.Value)),
        ];
        Json.Map map = Json.MapOf(value is null ? others : [.. others, (key, value)]);
        try
        {
            OwnFile.Replace(path, file => file.Write(CanonicalJson.Write(map)));
        }
        catch (Exception e) when (DiskTrouble.Is(e))
        {
            // What isn't kept is chosen or fed again; the disk's trouble is told at the next entry.
        }
    }

    private Json.Map? Read()
    {
        try
        {
            return File.Exists(path) && CanonicalJson.Read(File.ReadAllBytes(path)) is { Value: Json.Map map }
                ? map
                : null;
        }
        catch (Exception e) when (DiskTrouble.Is(e))
        {
            return null;
        }
    }
}
