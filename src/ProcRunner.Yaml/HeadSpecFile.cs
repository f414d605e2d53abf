using ProcRunner.Procedures;
using ProcRunner.Yaml.Heads;
using ProcRunner.Yaml.Trees;

namespace ProcRunner.Yaml;

/// <summary>Head spec files: see docs/head-spec-format.md.</summary>
public static class HeadSpecFile
{
    /// <summary>Reads a head spec from its text and reports everything that is wrong with it.</summary>
    /// <param name="fileName">Named in problems; nothing is opened.</param>
    /// <param name="text">The file's bytes, UTF-8.</param>
    public static Loaded<HeadSpec> Load(string fileName, ReadOnlyMemory<byte> text)
    {
        ProblemLog log = new(fileName);
        HeadSpec? head = null;
        try
        {
            head = TreeReader.Read(text.Span, log) is { } root ? new HeadSpecReader(log).Read(root) : null;
        }
        catch (TooManyProblemsException)
        {
            // The log holds as many as anyone reads.
        }

        return new Loaded<HeadSpec>(head, log.InOrder());
    }

    /// <summary>Reads a head spec from a file; one that can't be opened is a problem like others.</summary>
    public static Loaded<HeadSpec> Open(string path)
    {
        ProblemLog log = new(path);
        return FileBytes.Read(path, log) is { } bytes ? Load(path, bytes) : new Loaded<HeadSpec>(null, log.InOrder());
    }
}
