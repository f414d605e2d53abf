using ProcRunner.Trail;

namespace ProcRunner.Tui.Training;

/// <summary>When the coach is to speak, as each learner chose last; a file in the practice room's folder.</summary>
/// <param name="folder">The folder.</param>
internal sealed class CoachBook(string folder)
{
    /// <summary>The modes by the words that are typed and stored for them.</summary>
    public static IReadOnlyDictionary<string, CoachMode> Words { get; } =
        new Dictionary<string, CoachMode>(StringComparer.Ordinal)
        {
            ["off"] = CoachMode.Off,
            ["asked"] = CoachMode.Asked,
            ["each-step"] = CoachMode.EachStep,
        };

    private string Path => System.IO.Path.Combine(folder, "coach.json");

    /// <summary>What a learner chose; asked, where nothing was chosen or it can't be read.</summary>
    public CoachMode Read(string person) =>
        Map()?.TextAt(person) is { } word && Words.TryGetValue(word, out CoachMode mode) ? mode : CoachMode.Asked;

    /// <summary>Keeps what a learner chose; where it can't be written it counts until the program ends.</summary>
    public void Write(string person, CoachMode mode)
    {
        IEnumerable<(string, Json)> others = (Map()?.Items ?? [])
            .Where(entry => entry.Key != person)
            .Select(entry => (entry.Key, entry.Value));
        Json.Map map = Json.MapOf([.. others, (person, new Json.Text(Words.First(one => one.Value == mode).Key))]);
        string half = Path + ".new";
        try
        {
            File.WriteAllBytes(half, CanonicalJson.Write(map));
            File.Move(half, Path, overwrite: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // A mode that isn't kept is chosen again; nothing of the lesson hangs on it.
        }
    }

    private Json.Map? Map()
    {
        try
        {
            return File.Exists(Path) && CanonicalJson.Read(File.ReadAllBytes(Path)) is { Value: Json.Map map }
                ? map
                : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
