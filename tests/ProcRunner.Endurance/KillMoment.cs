namespace ProcRunner.Endurance;

/// <summary>When a round kills the program.</summary>
/// <param name="Answered">
/// Entries that are made one by one, each after the answer to the one before; null lets the program start with all entries
/// in its pipe, and kills it whatever it does then.
/// </param>
/// <param name="Delay">How long after the start, or after the last entry was sent.</param>
/// <param name="Streams">Sends all further entries at once after those, so that the kill falls anywhere among them.</param>
internal sealed record KillMoment(int? Answered, TimeSpan Delay, bool Streams)
{
    /// <summary>
    /// Chooses a moment. On a store that is still to be made, every other one is during the start; later one in eight, with
    /// three in eight within some milliseconds of an entry and half of them in a stream of entries.
    /// </summary>
    public static KillMoment Choose(Random random, bool isNew) =>
        random.Next(8) switch
        {
            0 => new(null, TimeSpan.FromMilliseconds(random.Next(800)), Streams: true),
            < 4 when isNew => new(null, TimeSpan.FromMilliseconds(100 + random.Next(700)), Streams: true),
            < 4 => new(random.Next(12), TimeSpan.FromMicroseconds(random.Next(6000)), Streams: false),
            _ => new(random.Next(3), TimeSpan.FromMicroseconds(random.Next(500_000)), Streams: true),
        };
}
