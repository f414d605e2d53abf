using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Host;

/// <summary>Runs a desk on the terminal.</summary>
internal static class ScreenHost
{
    // The clock on the screen; and an Escape that may yet begin a sequence is held 50 ms.
    private static readonly TimeSpan Idle = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan AfterKey = TimeSpan.FromMilliseconds(60);

    /// <summary>What the terminal can do; <paramref name="fault"/> says why no screen can be drawn on it, or is empty.</summary>
    public static TerminalKind Terminal(out string fault) =>
        TerminalKind.Read(
            Environment.GetEnvironmentVariable,
            !Console.IsInputRedirected && !Console.IsOutputRedirected,
            OperatingSystem.IsWindows(),
            out fault
        );

    /// <summary>
    /// Puts the number pad and the cursor keys back to plain: .NET switches a terminal to their application mode as soon as
    /// anything is written to it, and leaves it so.
    /// </summary>
    public static void LeaveKeysPlain()
    {
        _ = Terminal(out string fault);
        if (fault.Length == 0 && !OperatingSystem.IsWindows())
        {
            Console.Out.Write("\u001b[?1l\u001b>");
            Console.Out.Flush();
        }
    }

    /// <summary>Runs until the last screen is left.</summary>
    /// <returns>
    /// 0 when it was left; 2 after an error of the program's own; 128 and the signal's number when one ended it (143 SIGTERM, 129
    /// SIGHUP or a terminal that is gone).
    /// </returns>
    public static int Run(Desk desk, HostOptions options)
    {
        using Wake wake = new();
        using Ending ending = new(wake);
        HostSession? session = null;
        try
        {
            session = new HostSession(desk, options, wake, ending.HangUp);
            ending.Guard(session);
            Loop(session, wake, ending, options.Time);
            session.Dispose();
            return ending.Status;
        }
        // Whatever it is, the terminal is given back before anything is said.
#pragma warning disable CA1031
        catch (Exception error)
#pragma warning restore CA1031
        {
            session?.GiveBack();
            Console.Error.WriteLine(Fault.InWords(error));
            return Status.Usage;
        }
    }

    private static void Loop(HostSession session, Wake wake, Ending ending, TimeProvider time)
    {
        long lastKey = 0;
        while (!session.IsOver && ending.Status == 0)
        {
            wake.Wait(time.GetElapsedTime(lastKey) < AfterKey ? AfterKey : Idle);
            if (session.Turn())
            {
                lastKey = time.GetTimestamp();
            }
        }
    }
}
