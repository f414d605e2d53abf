using System.Runtime.InteropServices;

namespace ProcRunner.Tui.Shell;

/// <summary>While it stands, Ctrl+C and a request to end stop the work that is under way, rather than the program at once.</summary>
internal sealed class StopSignals : IDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly PosixSignalRegistration[] _signals;

    /// <summary>Begins to listen.</summary>
    public StopSignals() =>
        _signals = [
            PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop),
            PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop),
        ];

    /// <summary>Cancelled when the work is to stop.</summary>
    public CancellationToken Token => _stop.Token;

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (PosixSignalRegistration signal in _signals)
        {
            signal.Dispose();
        }

        _stop.Dispose();
    }

    private void Stop(PosixSignalContext context)
    {
        context.Cancel = true;
        _stop.Cancel();
    }
}
