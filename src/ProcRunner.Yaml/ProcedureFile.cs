using ProcRunner.Procedures;
using ProcRunner.Yaml.Plans;
using ProcRunner.Yaml.Trees;

namespace ProcRunner.Yaml;

/// <summary>Procedure files: see docs/procedure-format.md.</summary>
public static class ProcedureFile
{
    /// <summary>Reads a procedure from its text and reports everything that is wrong with it.</summary>
    /// <param name="fileName">Named in problems; nothing is opened.</param>
    /// <param name="text">The file's bytes, UTF-8.</param>
    public static Loaded<Procedure> Load(string fileName, ReadOnlyMemory<byte> text)
    {
        ProblemLog log = new(fileName);
        Procedure? procedure = null;
        try
        {
            procedure = TreeReader.Read(text.Span, log) is { } root ? new ProcedureReader(log).Read(root) : null;
        }
        catch (TooManyProblemsException)
        {
            // The log holds as many as anyone reads.
        }

        return new Loaded<Procedure>(procedure, log.InOrder());
    }

    /// <summary>Reads a procedure from a file; one that can't be opened is a problem like others.</summary>
    public static Loaded<Procedure> Open(string path)
    {
        ProblemLog log = new(path);
        return FileBytes.Read(path, log) is { } bytes ? Load(path, bytes) : new Loaded<Procedure>(null, log.InOrder());
    }
}
