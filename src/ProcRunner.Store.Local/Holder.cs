using System.Globalization;
using System.Text;
using ProcRunner.Text;

namespace ProcRunner.Store.Local;

/// <summary>Who holds a store, as the holder wrote it down.</summary>
/// <param name="ProcessId">The process.</param>
/// <param name="Machine">The machine it runs on.</param>
/// <param name="Since">Since when.</param>
/// <param name="Purpose">What for, in the holder's words.</param>
public sealed record Holder(int ProcessId, string Machine, DateTimeOffset Since, string Purpose)
{
    /// <summary>True when this very process wrote it.</summary>
    internal bool IsThisProgram =>
        ProcessId == Environment.ProcessId && Machine == SafeText.Clean(Environment.MachineName);

    /// <summary>The holder in plain words, fit for a terminal.</summary>
    public string InWords() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{SafeText.Show(Purpose)} (process {ProcessId} on {SafeText.Show(Machine)}, since {Since:yyyy-MM-dd HH:mm} UTC)"
        );

    internal void Write(string path)
    {
        string text = string.Create(
            CultureInfo.InvariantCulture,
            $"pid {ProcessId}\nmachine {SafeText.Clean(Machine)}\nsince {Since:yyyy-MM-dd'T'HH:mm:ss'Z'}\npurpose {SafeText.Clean(Purpose)}\n"
        );
        using FileStream file = Disk.OpenShared(
            path,
            FileMode.Create,
            FileAccess.Write,
            FileShare.ReadWrite | FileShare.Delete
        );
        file.Write(Encoding.UTF8.GetBytes(text));
    }

    /// <summary>Reads the file; null when it is missing, half written or anything else.</summary>
    internal static Holder? Read(string path)
    {
        string[] lines;
        try
        {
            using FileStream file = Disk.OpenForReading(path);
            using var reader = new StreamReader(file);
            char[] text = new char[4096];
            lines = new string(text, 0, reader.ReadBlock(text)).Split('\n');
        }
        catch (Exception e) when (DiskTrouble.Is(e))
        {
            return null;
        }

        string? Field(string name) =>
            lines.FirstOrDefault(line => line.StartsWith(name + " ", StringComparison.Ordinal))?[(name.Length + 1)..];
        return
            int.TryParse(Field("pid"), NumberStyles.None, CultureInfo.InvariantCulture, out int pid)
            && Field("machine") is { } machine
            && Field("purpose") is { } purpose
            && DateTimeOffset.TryParseExact(
                Field("since"),
                "yyyy-MM-dd'T'HH:mm:ss'Z'",
                CultureInfo.InvariantCulture,
                DateTimeStyles.AssumeUniversal,
                out DateTimeOffset since
            )
            ? new(pid, machine, since, purpose)
            : null;
    }
}
