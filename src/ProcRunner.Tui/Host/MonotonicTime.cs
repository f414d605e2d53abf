using Terminal.Gui.Time;
using ITimer = Terminal.Gui.Time.ITimer;

namespace ProcRunner.Tui.Host;

/// <summary>
/// Terminal.Gui's clock, counted from the start of the program. Its own takes the wall clock, and a clock set back an hour then
/// stops every timer for an hour.
/// </summary>
internal sealed class MonotonicTime(TimeProvider time) : ITimeProvider
{
    private static readonly DateTime Origin = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc);
    private readonly long _start = time.GetTimestamp();

    /// <inheritdoc/>
    public DateTime Now => Origin + time.GetElapsedTime(_start);

    /// <inheritdoc/>
    public Task Delay(TimeSpan duration, CancellationToken cancellationToken = default) =>
        Task.Delay(duration, time, cancellationToken);

    /// <inheritdoc/>
    public ITimer CreateTimer(TimeSpan interval, Action callback) => new Periodic(time, interval, callback);

    private sealed class Periodic(TimeProvider time, TimeSpan interval, Action callback) : ITimer
    {
        private System.Threading.ITimer? _timer;

        public bool IsRunning => _timer is not null;

        public void Start() => _timer ??= time.CreateTimer(_ => callback(), null, interval, interval);

        public void Stop()
        {
            _timer?.Dispose();
            _timer = null;
        }

        public void Dispose() => Stop();
    }
}
