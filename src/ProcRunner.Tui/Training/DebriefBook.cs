using System.Text;
using ProcRunner.Trail;

namespace ProcRunner.Tui.Training;

/// <summary>What came of every lesson taken, a line each, in the practice room's folder.</summary>
/// <param name="folder">The folder.</param>
internal sealed class DebriefBook(string folder)
{
    private string Path => System.IO.Path.Combine(folder, "debriefs.jsonl");

    /// <summary>A line of the book.</summary>
    /// <param name="Job">Id of the job it was taken on.</param>
    /// <param name="Lesson">The lesson's name.</param>
    /// <param name="Person">Who took it.</param>
    /// <param name="Caught">Faults caught.</param>
    /// <param name="Planted">Faults planted, as far as they were reached.</param>
    /// <param name="IsClean">True when nothing was missed, misread or cut too deep.</param>
    public sealed record Line(string Job, string Lesson, string Person, int Caught, int Planted, bool IsClean);

    /// <summary>Every line, the oldest first; one that can't be read is passed over.</summary>
    public IReadOnlyList<Line> Read()
    {
        if (!File.Exists(Path))
        {
            return [];
        }

        List<Line> lines = [];
        foreach (string text in File.ReadLines(Path))
        {
            if (
                CanonicalJson.Read(Encoding.UTF8.GetBytes(text)) is { Value: Json.Map map }
                && map.TextAt("job") is { } job
                && map.TextAt("lesson") is { } lesson
                && map.TextAt("person") is { } person
                && map.WholeAt("caught") is { } caught
                && map.WholeAt("planted") is { } planted
            )
            {
                lines.Add(new(job, lesson, person, (int)caught, (int)planted, map.TextAt("clean") == "yes"));
            }
        }

        return lines;
    }

    /// <summary>Writes a debrief, once for each job.</summary>
    public void Write(string job, Debrief debrief)
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
            ("clean", new Json.Text(debrief.IsClean ? "yes" : "no"))
        );
        FileStreamOptions options = new() { Mode = FileMode.Append, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        using FileStream file = new(Path, options);
        file.Write([.. CanonicalJson.Write(map), (byte)'\n']);
    }

    /// <summary>A person's progress in a lesson, drawn: a letter for each time it was taken, the oldest first.</summary>
    public string Chart(string lesson, string person) =>
        string.Concat(
            Read()
                .Where(line => line.Lesson == lesson && line.Person == person)
                .Select(line =>
                    line.IsClean ? '#'
                    : line.Caught > 0 && line.Caught == line.Planted ? '+'
                    : '.'
                )
        );
}
