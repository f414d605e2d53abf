using ProcRunner.Trail;

namespace ProcRunner.Tui.Training;

/// <summary>When the coach is to speak, as each learner chose last.</summary>
/// <param name="folder">The practice room's folder.</param>
internal sealed class CoachBook(string folder)
{
    private readonly RoomFile _file = new(Path.Combine(folder, "coach.json"));

    /// <summary>The modes by the words that are typed and stored for them.</summary>
    public static IReadOnlyDictionary<string, CoachMode> Words { get; } =
        new Dictionary<string, CoachMode>(StringComparer.Ordinal)
        {
            ["off"] = CoachMode.Off,
            ["asked"] = CoachMode.Asked,
            ["each-step"] = CoachMode.EachStep,
        };

    /// <summary>What a learner chose; asked, where nothing was chosen or it can't be read.</summary>
    public CoachMode Read(string person) =>
        _file[person] is Json.Text { Value: var word } && Words.TryGetValue(word, out CoachMode mode)
            ? mode
            : CoachMode.Asked;

    /// <summary>Keeps what a learner chose.</summary>
    public void Write(string person, CoachMode mode) =>
        _file.Keep(person, new Json.Text(Words.First(one => one.Value == mode).Key));
}
