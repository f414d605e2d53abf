namespace ProcRunner.Tui.Host;

/// <summary>Wakes the loop of the screen from another thread: a key came, the window changed, the program is to end.</summary>
internal sealed class Wake : IDisposable
{
    private readonly AutoResetEvent _event = new(false);

    /// <summary>Wakes the loop, now or when it next waits.</summary>
    public void Up() => _event.Set();

    /// <summary>Waits until woken, or until the time is over.</summary>
    public void Wait(TimeSpan atMost) => _event.WaitOne(atMost);

    /// <inheritdoc/>
    public void Dispose() => _event.Dispose();
}
