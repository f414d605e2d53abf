namespace ProcRunner.Tui.Tests.Host;

/// <summary>A wall clock that can be set, as a person or the network sets one; what measures time runs on.</summary>
internal sealed class WallClock : TimeProvider
{
    private DateTimeOffset _now = new(2031, 5, 6, 10, 0, 0, TimeSpan.Zero);
    private long _elapsed;

    /// <inheritdoc/>
    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    /// <inheritdoc/>
    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    /// <inheritdoc/>
    public override DateTimeOffset GetUtcNow() => _now;

    /// <inheritdoc/>
    public override long GetTimestamp() => _elapsed;

    /// <summary>Time goes by.</summary>
    public void Pass(TimeSpan time)
    {
        _now += time;
        _elapsed += time.Ticks;
    }

    /// <summary>Somebody sets the clock.</summary>
    public void Set(TimeSpan by) => _now += by;
}
