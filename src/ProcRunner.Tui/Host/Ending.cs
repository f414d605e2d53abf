using System.Runtime.InteropServices;

namespace ProcRunner.Tui.Host;

/// <summary>
/// How a screen ends when nobody left it: by a signal, because the terminal is gone, or by an error on any thread. The terminal is
/// given back in each case, by another thread where the loop hangs.
/// </summary>
internal sealed class Ending : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(2);

    private readonly Wake _wake;
    private readonly List<PosixSignalRegistration> _registrations = [];
    private HostSession? _session;
    private Timer? _fallback;
    private int _status;

    /// <summary>Listens from here on.</summary>
    public Ending(Wake wake)
    {
        _wake = wake;
        AppDomain.CurrentDomain.UnhandledException += EndByError;
        Register(PosixSignal.SIGTERM, 15);
        Register(PosixSignal.SIGHUP, 1);
        Register(PosixSignal.SIGINT, 2);
        Register(PosixSignal.SIGQUIT, 3);
        if (!OperatingSystem.IsWindows())
        {
            // A stopped program would leave its screen to the shell.
            Listen(PosixSignal.SIGTSTP, context => context.Cancel = true);
            Listen(PosixSignal.SIGCONT, _ => _session?.Repaint());
            Listen(PosixSignal.SIGWINCH, _ => _wake.Up());
        }
    }

    /// <summary>What the program ends with: 128 and the signal's number; 0 while none came.</summary>
    public int Status => _status;

    /// <summary>The session whose terminal is to be given back.</summary>
    public void Guard(HostSession session) => _session = session;

    /// <summary>The terminal is gone: as if hung up.</summary>
    public void HangUp() => End(1);

    /// <inheritdoc/>
    public void Dispose()
    {
        AppDomain.CurrentDomain.UnhandledException -= EndByError;
        _registrations.ForEach(registration => registration.Dispose());
        _fallback?.Dispose();
    }

    private void Register(PosixSignal signal, int number) =>
        Listen(
            signal,
            context =>
            {
                context.Cancel = true;
                End(number);
            }
        );

    // The registrations are kept: one that is collected no longer listens.
    private void Listen(PosixSignal signal, Action<PosixSignalContext> heard) =>
        _registrations.Add(PosixSignalRegistration.Create(signal, heard));

    private void End(int signal)
    {
        int status = 128 + signal;
        if (Interlocked.CompareExchange(ref _status, status, 0) != 0)
        {
            return;
        }

        // Before the loop is woken: it may never wake.
        _fallback = new Timer(_ => EndFromHere(status), null, Patience, Timeout.InfiniteTimeSpan);
        _wake.Up();
    }

    private void EndFromHere(int status)
    {
        _session?.GiveBack();
        Console.Error.WriteLine("The screen didn't answer and was ended. " + Fault.AllOnDisk);
        Environment.Exit(status);
    }

    private void EndByError(object sender, UnhandledExceptionEventArgs error)
    {
        _session?.GiveBack();
        Console.Error.WriteLine(Fault.InWords((Exception)error.ExceptionObject));
        Environment.Exit(Shell.Status.Usage);
    }
}
