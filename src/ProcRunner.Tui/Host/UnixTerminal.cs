using System.Runtime.InteropServices;

namespace ProcRunner.Tui.Host;

/// <summary>The few system calls on a terminal that .NET has no word for. On Unix only.</summary>
internal static partial class UnixTerminal
{
    private const short PollIn = 1;
    private const int Interrupted = 4;
    private const int TryAgain = 11;
    private const int RightNow = 0;

    // struct termios is 60 bytes on Linux and 72 on macOS; nothing in it is looked at, only kept and put back.
    private const int ModeBytes = 256;

    /// <summary>The terminal's mode: echo, lines, signals; null when it can't be had.</summary>
    public static byte[]? Mode()
    {
        byte[] mode = new byte[ModeBytes];
        return GetMode(0, mode) == 0 ? mode : null;
    }

    /// <summary>Puts a mode back.</summary>
    public static void SetMode(byte[] mode) => _ = SetMode(0, RightNow, mode);

    /// <summary>Waits for input; false when none came in time.</summary>
    public static bool WaitForInput(TimeSpan atMost)
    {
        Watched stdin = new(0, PollIn, 0);

        // More than "readable" counts too: a terminal that is gone says so by a read that fails.
        return Poll(ref stdin, 1, (int)atMost.TotalMilliseconds) > 0;
    }

    /// <summary>Reads what is there: the number of bytes; 0 when the terminal is gone; -1 to try again.</summary>
    public static int Read(byte[] buffer)
    {
        nint count = Read(0, buffer, buffer.Length);
        if (count >= 0)
        {
            return (int)count;
        }

        return Marshal.GetLastPInvokeError() is Interrupted or TryAgain ? -1 : 0;
    }

    [LibraryImport("libc", EntryPoint = "tcgetattr", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int GetMode(int file, [Out] byte[] mode);

    [LibraryImport("libc", EntryPoint = "tcsetattr", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int SetMode(int file, int when, byte[] mode);

    [LibraryImport("libc", EntryPoint = "poll", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Poll(ref Watched watched, nuint count, int milliseconds);

    [LibraryImport("libc", EntryPoint = "read", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial nint Read(int file, [Out] byte[] buffer, nint count);

    [StructLayout(LayoutKind.Sequential)]
    private record struct Watched(int File, short Asked, short Happened);
}
