using System.Diagnostics;
using System.Globalization;
using System.Text;
using ProcRunner.Testing;

namespace ProcRunner.EndToEnd.Tests;

/// <summary>The program as it was built beside these tests, run in a data folder of its own.</summary>
internal sealed class BuiltProgram(string dataFolder)
{
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(3);

    /// <summary>The program: .artifacts/bin/PROJECT/CONFIGURATION/ holds each project's build.</summary>
    public static string Executable { get; } =
        Path.GetFullPath(
            Path.Combine(
                AppContext.BaseDirectory,
                "..",
                "..",
                "ProcRunner.Tui",
                Path.GetFileName(Path.TrimEndingDirectorySeparator(AppContext.BaseDirectory)),
                OperatingSystem.IsWindows() ? "procrunner.exe" : "procrunner"
            )
        );

    /// <summary>The demo's file of entries.</summary>
    public static string[] DemoLines { get; } = File.ReadAllLines(RepoRoot.PathOf("procedures/demo/pump-four.entries"));

    /// <summary>Runs it to its end.</summary>
    public Ended Run(string input, params string[] args)
    {
        using Process process = Start(args);
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> errors = process.StandardError.ReadToEndAsync();
        try
        {
            process.StandardInput.Write(input);
            process.StandardInput.Close();
        }
        catch (IOException)
        {
            // It ended before it had read everything, as it does after a refusal.
        }

        if (!process.WaitForExit(Longest))
        {
            process.Kill();
            throw new TimeoutException(string.Join(' ', args));
        }

        return new(process.ExitCode, output.Result, errors.Result);
    }

    /// <summary>Starts it; the caller talks to it.</summary>
    public Process Start(params string[] args)
    {
        ProcessStartInfo start = new(Executable, args)
        {
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardInputEncoding = new UTF8Encoding(false),
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
        };
        start.Environment["XDG_DATA_HOME"] = dataFolder;
        start.Environment["LOCALAPPDATA"] = dataFolder;
        return Process.Start(start)!;
    }

    /// <summary>Lines as input.</summary>
    public static string Text(IEnumerable<string> lines) => string.Join('\n', lines) + "\n";

    /// <summary>What a run came to.</summary>
    public sealed record Ended(int Status, string Output, string Errors)
    {
        /// <summary>Both streams.</summary>
        public string All => Output + Errors;

        public override string ToString() =>
            string.Create(CultureInfo.InvariantCulture, $"status {Status}\n{Output}\n{Errors}");
    }
}
