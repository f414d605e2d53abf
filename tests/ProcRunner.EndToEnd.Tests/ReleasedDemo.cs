using ProcRunner.Testing;

namespace ProcRunner.EndToEnd.Tests;

/// <summary>A data folder in which the demo job was taken from teardown to release, once for all tests that look at it.</summary>
public sealed class ReleasedDemo : IDisposable
{
    private readonly TempFolder _folder = new();

    public ReleasedDemo()
    {
        Program = new BuiltProgram(_folder.Path);
        Run = Program.Run(BuiltProgram.Text(BuiltProgram.DemoLines), "run", "DEMO", "--plain");
    }

    /// <summary>The program in that folder.</summary>
    internal BuiltProgram Program { get; }

    /// <summary>How the run ended.</summary>
    internal BuiltProgram.Ended Run { get; }

    /// <summary>The demo shop's store.</summary>
    public string Store => Path.Combine(_folder.Path, "procrunner", "demo-shop");

    /// <summary>The job's trail.</summary>
    public string Trail => Directory.GetFiles(Path.Combine(Store, "jobs"), "*.trail").Single();

    /// <summary>A copy of the store to do things to.</summary>
    public void CopyTo(string folder) => Copy(new DirectoryInfo(Store), folder);

    public void Dispose() => _folder.Dispose();

    private static void Copy(DirectoryInfo from, string to)
    {
        Directory.CreateDirectory(to);
        foreach (FileInfo file in from.GetFiles())
        {
            file.CopyTo(Path.Combine(to, file.Name));
        }

        foreach (DirectoryInfo folder in from.GetDirectories())
        {
            Copy(folder, Path.Combine(to, folder.Name));
        }
    }
}
