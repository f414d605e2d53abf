using System.Diagnostics;

namespace ProcRunner.Endurance.Tests;

/// <summary>The built program, called once.</summary>
internal static class Program
{
    /// <summary>Runs a verb on a store, with nothing on its input.</summary>
    /// <returns>The exit status, and all that it said.</returns>
    public static (int Status, string Said) Run(string store, string words) =>
        Run(BuiltProgram.Path, [.. words.Split(' '), "--store", store]);

    /// <summary>Runs anything.</summary>
    public static (int Status, string Said) Run(string program, params string[] words)
    {
        using Process run = Process.Start(
            new ProcessStartInfo(program, words)
            {
                UseShellExecute = false,
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            }
        )!;
        run.StandardInput.Close();
        Task<string> errors = run.StandardError.ReadToEndAsync();
        string said = run.StandardOutput.ReadToEnd() + errors.GetAwaiter().GetResult();
        run.WaitForExit();
        return (run.ExitCode, said);
    }
}
