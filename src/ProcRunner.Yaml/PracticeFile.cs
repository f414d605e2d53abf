using ProcRunner.Lessons;
using ProcRunner.Yaml.Lessons;
using ProcRunner.Yaml.Trees;

namespace ProcRunner.Yaml;

/// <summary>Practice setups and lessons: see docs/practice-format.md.</summary>
public static class PracticeFile
{
    /// <summary>Reads a practice setup from its text and reports everything that is wrong with it.</summary>
    /// <param name="fileName">Named in problems; nothing is opened.</param>
    /// <param name="text">The file's bytes, UTF-8.</param>
    public static Loaded<PracticeSetup> LoadSetup(string fileName, ReadOnlyMemory<byte> text) =>
        Load(fileName, text, (log, root) => new SetupReader(log).Read(root));

    /// <summary>Reads a lesson from its text and reports everything that is wrong with it.</summary>
    /// <param name="fileName">Named in problems; nothing is opened.</param>
    /// <param name="text">The file's bytes, UTF-8.</param>
    public static Loaded<Lesson> LoadLesson(string fileName, ReadOnlyMemory<byte> text) =>
        Load(fileName, text, (log, root) => new LessonReader(log).Read(root));

    /// <summary>Reads gauges that take the place of a setup's: a file with <c>unit</c> and <c>gauges</c>.</summary>
    /// <param name="fileName">Named in problems; nothing is opened.</param>
    /// <param name="text">The file's bytes, UTF-8.</param>
    public static Loaded<GaugeList> LoadGauges(string fileName, ReadOnlyMemory<byte> text) =>
        Load(fileName, text, (log, root) => new GaugeReader(log).ReadFile(root));

    /// <summary>Reads a practice setup from a file; one that can't be opened is a problem like others.</summary>
    public static Loaded<PracticeSetup> OpenSetup(string path) => Open(path, LoadSetup);

    /// <summary>Reads a lesson from a file; one that can't be opened is a problem like others.</summary>
    public static Loaded<Lesson> OpenLesson(string path) => Open(path, LoadLesson);

    /// <summary>Reads gauges from a file; one that can't be opened is a problem like others.</summary>
    public static Loaded<GaugeList> OpenGauges(string path) => Open(path, LoadGauges);

    private static Loaded<T> Open<T>(string path, Func<string, ReadOnlyMemory<byte>, Loaded<T>> load)
        where T : class
    {
        ProblemLog log = new(path);
        return FileBytes.Read(path, log) is { } bytes ? load(path, bytes) : new Loaded<T>(null, log.InOrder());
    }

    private static Loaded<T> Load<T>(string fileName, ReadOnlyMemory<byte> text, Func<ProblemLog, Node, T?> read)
        where T : class
    {
        ProblemLog log = new(fileName);
        T? value = null;
        try
        {
            value = TreeReader.Read(text.Span, log) is { } root ? read(log, root) : null;
        }
        catch (TooManyProblemsException)
        {
            // The log holds as many as anyone reads.
        }

        return new Loaded<T>(value, log.InOrder());
    }
}
