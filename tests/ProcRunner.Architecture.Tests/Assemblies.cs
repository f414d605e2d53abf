using System.Reflection;

namespace ProcRunner.Architecture.Tests;

/// <summary>The program's assemblies as they were built, found beside the tests.</summary>
internal static class Assemblies
{
    /// <summary>All of them: one for each project under src/.</summary>
    public static IReadOnlyList<Assembly> All { get; } = [.. SourceProject.All.Select(p => Load(p.Name))];

    /// <summary>The core.</summary>
    public static Assembly Core { get; } = Load("ProcRunner.Core");

    /// <summary>The assembly of a project under src/.</summary>
    public static Assembly Load(string project) => Assembly.Load(project == "ProcRunner.Tui" ? "procrunner" : project);

    /// <summary>Names of the assemblies that one uses.</summary>
    public static IEnumerable<string> UsedBy(Assembly assembly) =>
        assembly.GetReferencedAssemblies().Select(name => name.Name!);

    /// <summary>True for what comes with .NET itself.</summary>
    public static bool IsOfTheFramework(string name) =>
        name is "netstandard" or "mscorlib" or "System" or "Microsoft.CSharp" or "Microsoft.Win32.Primitives"
        || (name.StartsWith("System.", StringComparison.Ordinal) && name != "System.CommandLine");
}
