using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>Where trails and the texts they pin are read from: a store, or one job's exported file.</summary>
public interface ITrailReader
{
    /// <summary>A job's trail, or the shop book as far as it is there; what is missing or can't be read counts as empty.</summary>
    TrailReading ReadTrail(string of);

    /// <summary>A pinned text; null when it is missing or isn't what its digest says.</summary>
    byte[]? ReadText(Digest digest);
}
