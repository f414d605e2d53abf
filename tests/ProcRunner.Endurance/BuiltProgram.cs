namespace ProcRunner.Endurance;

/// <summary>The program as it was built beside this one, and the demo's file of entries.</summary>
internal static class BuiltProgram
{
    /// <summary>The program's file.</summary>
    public static string Path { get; } =
        System.IO.Path.Combine(AppContext.BaseDirectory, OperatingSystem.IsWindows() ? "procrunner.exe" : "procrunner");

    /// <summary>The entries that take the demo job from teardown to release.</summary>
    public static string Entries { get; } =
        System.IO.Path.Combine(AppContext.BaseDirectory, "procedures", "demo", "pump-four.entries");
}
