using ProcRunner.Problems;
using ProcRunner.Procedures;
using ProcRunner.Yaml;

namespace ProcRunner.Tui.Shell;

/// <summary>A procedure or head spec that a job can be opened with, with everything that is wrong with it.</summary>
/// <param name="Name">The file's name, for a person.</param>
/// <param name="IsOwn">True for a file of the shop's own.</param>
/// <param name="Title">Its title and revision; empty when it can't be read.</param>
/// <param name="Text">Its bytes, as they were when it was checked.</param>
/// <param name="Problems">What is wrong with it.</param>
/// <param name="GaugeKinds">Kinds of gauge that it asks for.</param>
internal sealed record PlanFile(
    string Name,
    bool IsOwn,
    string Title,
    byte[] Text,
    IReadOnlyList<Problem> Problems,
    IReadOnlyList<string> GaugeKinds
)
{
    private const int MostBytes = 1_048_576;

    /// <summary>Every procedure in some folders, and every head spec in them.</summary>
    /// <param name="folders">The program's own folder first, then the shop's.</param>
    public static (IReadOnlyList<PlanFile> Procedures, IReadOnlyList<PlanFile> Heads) Find(
        IReadOnlyList<string> folders
    )
    {
        List<PlanFile> procedures = [];
        List<PlanFile> heads = [];
        foreach ((string path, bool own) in folders.SelectMany((f, i) => FilesIn(f).Select(path => (path, i > 0))))
        {
            string name = Path.GetFileName(path);
            byte[]? text = Bytes(path);
            if (text is null)
            {
                procedures.Add(new(name, own, "", [], ProcedureFile.Open(path).Problems, []));
            }
            else if (Begins(text, "practice:"u8) || Begins(text, "lesson:"u8))
            {
                continue;
            }
            else if (Begins(text, "head:"u8))
            {
                Loaded<HeadSpec> head = HeadSpecFile.Load(name, text);
                heads.Add(new(name, own, TitleOf(head.Value?.Title, head.Value?.Revision), text, head.Problems, []));
            }
            else
            {
                Loaded<Procedure> plan = ProcedureFile.Load(name, text);
                string[] kinds =
                [
                    .. plan.Value?.Steps.Select(s => s.Taking?.GaugeKind).OfType<string>().Distinct() ?? [],
                ];
                procedures.Add(
                    new(name, own, TitleOf(plan.Value?.Title, plan.Value?.Revision), text, plan.Problems, kinds)
                );
            }
        }

        return (procedures, heads);
    }

    /// <summary>The file in a list: its title, or how much is wrong with it.</summary>
    public string InList()
    {
        string count = Problems.Count.ToString(System.Globalization.CultureInfo.InvariantCulture);
        string what = Problems.Count switch
        {
            0 => Title,
            1 => "1 problem",
            _ => $"{count} problems",
        };
        return $"{Name}{(IsOwn ? " (the shop's own)" : "")}: {what}";
    }

    private static string TitleOf(string? title, int? revision) =>
        title is null
            ? ""
            : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{title}, revision {revision}");

    private static IEnumerable<string> FilesIn(string folder)
    {
        try
        {
            return Directory.Exists(folder)
                ?
                [
                    .. Directory
                        .EnumerateFiles(folder, "*.yaml", SearchOption.AllDirectories)
                        .Order(StringComparer.Ordinal),
                ]
                : [];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }

    private static byte[]? Bytes(string path)
    {
        try
        {
            return new FileInfo(path).Length <= MostBytes ? File.ReadAllBytes(path) : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    // A file says what it is in its first key.
    private static bool Begins(ReadOnlySpan<byte> text, ReadOnlySpan<byte> key)
    {
        int at = text.IndexOf(key);
        return at == 0 || (at > 0 && text[at - 1] == (byte)'\n');
    }
}
