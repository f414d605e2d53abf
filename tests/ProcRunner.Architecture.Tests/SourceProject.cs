using System.Xml.Linq;
using ProcRunner.Testing;

namespace ProcRunner.Architecture.Tests;

/// <summary>A project under src/, as its project file says.</summary>
/// <param name="Name">The folder's name, which is the project's.</param>
/// <param name="Projects">Names of the projects it refers to.</param>
/// <param name="Packages">Names of the packages it refers to.</param>
internal sealed record SourceProject(string Name, IReadOnlyList<string> Projects, IReadOnlyList<string> Packages)
{
    /// <summary>Every project under src/.</summary>
    public static IReadOnlyList<SourceProject> All { get; } =
    [.. Directory.GetFiles(RepoRoot.PathOf("src"), "*.csproj", SearchOption.AllDirectories).Select(Read)];

    /// <summary>Where it stands: a project may only refer to ones further down.</summary>
    public int Height =>
        Name switch
        {
            "ProcRunner.Core" => 0,
            "ProcRunner.Tui" => 2,
            _ => 1,
        };

    private static SourceProject Read(string path)
    {
        XDocument project = XDocument.Load(path);
        IEnumerable<string> Includes(string element) =>
            project.Descendants(element).Select(reference => reference.Attribute("Include")!.Value);
        return new(
            Path.GetFileNameWithoutExtension(path),
            [.. Includes("ProjectReference").Select(p => Path.GetFileNameWithoutExtension(p.Replace('\\', '/')))],
            [.. Includes("PackageReference")]
        );
    }
}
