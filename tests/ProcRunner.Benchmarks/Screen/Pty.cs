using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;

namespace ProcRunner.Benchmarks.Screen;

/// <summary>A pseudo-terminal with a program on it. On Linux only.</summary>
internal sealed partial class Pty : IDisposable
{
    private const int ReadWrite = 2;
    private const int NoControllingTerminal = 0x100;
    private const uint SetWindowSize = 0x5414;
    private const short Readable = 1;

    private readonly byte[] _buffer = new byte[65536];
    private readonly int _file;
    private readonly Process _program;

    /// <summary>Starts a program on a terminal of a size.</summary>
    public Pty(int columns, int rows, string program, params ReadOnlySpan<string> words)
    {
        _file = Open("/dev/ptmx", ReadWrite | NoControllingTerminal);
        byte[] name = new byte[64];
        var size = new WindowSize((ushort)rows, (ushort)columns, 0, 0);
        if (
            _file < 0
            || Unlock(_file) != 0
            || Name(_file, name, name.Length) != 0
            || Resize(_file, SetWindowSize, size) != 0
        )
        {
            throw new IOException("No pseudo-terminal can be had.");
        }

        string path = System.Text.Encoding.ASCII.GetString(name).TrimEnd('\0');

        // setsid makes the pseudo-terminal the program's controlling one; both give way to the program by exec.
        ProcessStartInfo start = new("sh", ["-c", $"exec <{path} >{path} 2>&1; exec setsid -c \"$0\" \"$@\"", program])
        {
            UseShellExecute = false,
            Environment = { ["TERM"] = "xterm-256color", ["LC_ALL"] = "C.UTF-8" },
        };
        foreach (string word in words)
        {
            start.ArgumentList.Add(word);
        }

        Started = Stopwatch.GetTimestamp();
        _program = Process.Start(start)!;
    }

    /// <summary>When the program was started.</summary>
    public long Started { get; }

    /// <summary>Sends bytes as if typed.</summary>
    public void Type(string keys)
    {
        byte[] bytes = System.Text.Encoding.UTF8.GetBytes(keys);
        if (Write(_file, bytes, bytes.Length) != bytes.Length)
        {
            throw new IOException("The pseudo-terminal takes no keys.");
        }
    }

    /// <summary>What the program sends next; empty when nothing comes in time.</summary>
    public byte[] Read(TimeSpan atMost)
    {
        Watched watched = new(_file, Readable, 0);
        if (Poll(ref watched, 1, (int)atMost.TotalMilliseconds) <= 0 || (watched.Happened & Readable) == 0)
        {
            return [];
        }

        nint count = Read(_file, _buffer, _buffer.Length);
        return count > 0 ? _buffer[..(int)count] : [];
    }

    /// <summary>All that comes until nothing does for a while.</summary>
    public byte[] ReadUntilQuiet(TimeSpan quiet)
    {
        List<byte> all = [];
        while (Read(quiet) is { Length: > 0 } some)
        {
            all.AddRange(some);
        }

        return [.. all];
    }

    /// <summary>Processor time so far, of the program and of what it started.</summary>
    public TimeSpan ProcessorTime()
    {
        _program.Refresh();
        return _program.TotalProcessorTime;
    }

    /// <summary>Resident memory in MiB.</summary>
    public double ResidentMiB()
    {
        string line = File.ReadLines(string.Create(CultureInfo.InvariantCulture, $"/proc/{_program.Id}/status"))
            .First(l => l.StartsWith("VmRSS:", StringComparison.Ordinal));
        return double.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture)
            / 1024;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _program.Kill();
        _program.WaitForExit();
        _program.Dispose();
        _ = Close(_file);
    }

    [LibraryImport("libc", EntryPoint = "open", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int Open(string path, int flags);

    [LibraryImport("libc", EntryPoint = "unlockpt")]
    private static partial int Unlock(int file);

    [LibraryImport("libc", EntryPoint = "ptsname_r")]
    private static partial int Name(int file, [Out] byte[] name, nint size);

    [LibraryImport("libc", EntryPoint = "ioctl")]
    private static partial int Resize(int file, nuint request, in WindowSize size);

    [LibraryImport("libc", EntryPoint = "poll")]
    private static partial int Poll(ref Watched watched, nuint count, int milliseconds);

    [LibraryImport("libc", EntryPoint = "read")]
    private static partial nint Read(int file, [Out] byte[] buffer, nint count);

    [LibraryImport("libc", EntryPoint = "write")]
    private static partial nint Write(int file, byte[] buffer, nint count);

    [LibraryImport("libc", EntryPoint = "close")]
    private static partial int Close(int file);

    [StructLayout(LayoutKind.Sequential)]
    private record struct Watched(int File, short Asked, short Happened);

    [StructLayout(LayoutKind.Sequential)]
    private readonly record struct WindowSize(ushort Rows, ushort Columns, ushort Width, ushort Height);
}
