namespace ProcRunner.Store.Local;

/// <summary>A trail that the index doesn't have as it is now; null when the trail is gone.</summary>
internal sealed record IndexChange(string JobId, TrailTip? State);
