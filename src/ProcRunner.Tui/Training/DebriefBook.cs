using System.Globalization;
using System.Text;
using ProcRunner.Trail;

namespace ProcRunner.Tui.Training;

/// <summary>What came of every lesson taken, a line each, in the practice room's folder.</summary>
/// <param name="folder">The folder.</param>
internal sealed class DebriefBook(string folder)
{
    private const string TimeFormat = "yyyy-MM-ddTHH:mm:ssZ";

    private string Path => System.IO.Path.Combine(folder, "debriefs.jsonl");

    /// <summary>When the coach speaks to whom, beside it.</summary>
    public CoachBook Coach { get; } = new(folder);

    /// <summary>Where tools stand in the metal, beside it.</summary>
    public ToolBook Tool { get; } = new(folder);

    /// <summary>A line of the book.</summary>
    /// <param name="Job">Id of the job it was taken on.</param>
    /// <param name="Lesson">The lesson's name.</param>
    /// <param name="Person">Who took it.</param>
    /// <param name="At">When it ended.</param>
    /// <param name="Caught">Faults caught.</param>
    /// <param name="Planted">Faults planted, as far as they were reached.</param>
    /// <param name="ToMend">What was missed, misread or cut too deep, counted; 0 of a clean one.</param>
    /// <param name="Minutes">How long it took.</param>
    public sealed record Line(
        string Job,
        string Lesson,
        string Person,
        DateTimeOffset At,
        int Caught,
        int Planted,
        int ToMend,
        int Minutes
    );

    /// <summary>Lines that couldn't be read the last time: they stay where they are and count for nothing.</summary>
    public int Unreadable { get; private set; }

    /// <summary>What there is to say of lines that can't be read; empty when all can.</summary>
    public string UnreadableInWords =>
        Unreadable == 0
            ? ""
            : string.Create(
                CultureInfo.InvariantCulture,
                $"Lines of debriefs.jsonl that can't be read and count for nothing: {Unreadable}."
            );

    /// <summary>Every line, the oldest first; one that can't be read is counted and passed over.</summary>
    public IReadOnlyList<Line> Read()
    {
        if (!File.Exists(Path))
        {
            return [];
        }

        List<Line> lines = [];
        Unreadable = 0;
        foreach (string text in File.ReadLines(Path).Where(line => line.Length > 0))
        {
            if (
                CanonicalJson.Read(Encoding.UTF8.GetBytes(text)) is { Value: Json.Map map }
                && map.TextAt("job") is { } job
                && map.TextAt("lesson") is { } lesson
                && map.TextAt("person") is { } person
                && map.WholeAt("caught") is { } caught
                && map.WholeAt("planted") is { } planted
                && map.WholeAt("to-mend") is { } toMend
                && map.WholeAt("minutes") is { } minutes
                && DateTimeOffset.TryParseExact(
                    map.TextAt("at"),
                    TimeFormat,
                    CultureInfo.InvariantCulture,
                    DateTimeStyles.AssumeUniversal,
                    out DateTimeOffset at
                )
            )
            {
                lines.Add(new(job, lesson, person, at, (int)caught, (int)planted, (int)toMend, (int)minutes));
            }
            else
            {
                Unreadable++;
            }
        }

        return lines;
    }

    /// <summary>Writes a debrief, once for each job.</summary>
    /// <param name="job">Id of the job it was taken on.</param>
    /// <param name="at">When it ended.</param>
    /// <param name="debrief">How it went.</param>
    public void Write(string job, DateTimeOffset at, Debrief debrief)
    {
        if (Read().Any(line => line.Job == job))
        {
            return;
        }

        Json.Map map = Json.MapOf(
            ("job", new Json.Text(job)),
            ("lesson", new Json.Text(debrief.Lesson)),
            ("person", new Json.Text(debrief.Person)),
            ("caught", new Json.Whole(debrief.Caught.Count)),
            ("planted", new Json.Whole(debrief.Caught.Count + debrief.Missed.Count)),
            ("to-mend", new Json.Whole(debrief.ToMend)),
            ("minutes", new Json.Whole(debrief.Minutes)),
            ("at", new Json.Text(at.UtcDateTime.ToString(TimeFormat, CultureInfo.InvariantCulture)))
        );
        FileStreamOptions options = new() { Mode = FileMode.OpenOrCreate, Access = FileAccess.ReadWrite };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        using FileStream file = new(Path, options);
        file.Write([.. IsTorn(file) ? "\n"u8 : [], .. CanonicalJson.Write(map), (byte)'\n']);
        file.Flush(flushToDisk: true);
    }

    // Leaves the file at its end. A line that a power cut left half is closed, so that the next one stands for itself.
    private static bool IsTorn(FileStream file)
    {
        if (file.Length == 0)
        {
            return false;
        }

        file.Seek(-1, SeekOrigin.End);
        return file.ReadByte() != '\n';
    }

    /// <summary>A person's lessons, the oldest first.</summary>
    public IReadOnlyList<Line> Of(string person) => [.. Read().Where(line => line.Person == person)];
}
