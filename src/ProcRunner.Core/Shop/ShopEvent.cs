using System.Collections.Immutable;
using ProcRunner.People;
using ProcRunner.Trail;

namespace ProcRunner.Shop;

/// <summary>What the shop book records. How each is written: <see cref="ShopEventFormat"/>.</summary>
public abstract record ShopEvent
{
    private ShopEvent() { }

    /// <summary>The store was made.</summary>
    public sealed record ShopFounded(string Name) : ShopEvent;

    /// <summary>
    /// Someone may sign from now on; or, with the id and key of someone known, has another name or role from now on.
    /// </summary>
    public sealed record PersonAdded(Person Person) : ShopEvent;

    /// <summary>Someone has left; the entry's time is when.</summary>
    public sealed record PersonRetired(string Id) : ShopEvent;

    /// <summary>Someone's key is behind another PIN.</summary>
    public sealed record PinChanged(string Id, WrappedKey WrappedKey) : ShopEvent;

    /// <summary>A gauge came into use.</summary>
    public sealed record GaugeAdded(Gauge Gauge) : ShopEvent;

    /// <summary>A gauge's data changed: calibrated, repaired, renamed.</summary>
    public sealed record GaugeChanged(Gauge Gauge) : ShopEvent;

    /// <summary>The machine's readout was set up, or its set-up confirmed.</summary>
    public sealed record ReadoutSet(Readout Readout) : ShopEvent;

    /// <summary>A job was opened.</summary>
    public sealed record JobOpened(string Job, string Stamp, ImmutableArray<Digest> Texts) : ShopEvent;

    /// <summary>A job's trail had got this far.</summary>
    public sealed record JobAnchored(string Job, long Sequence, Digest Digest, Anchor Why) : ShopEvent;

    /// <summary>A job was closed out: nothing follows in its trail.</summary>
    public sealed record JobClosedOut(string Job, long Sequence, Digest Digest) : ShopEvent;

    /// <summary>The end of a trail wasn't a whole line and was put aside.</summary>
    /// <param name="Of">Whose trail: a job id, or <see cref="JobId.Shop"/>.</param>
    /// <param name="File">The file it was put aside to.</param>
    /// <param name="Length">Its length in bytes.</param>
    /// <param name="Digest">Its SHA-256.</param>
    public sealed record TornTailFound(string Of, string File, long Length, Digest Digest) : ShopEvent;

    /// <summary>What this entry says of a job stood in the job's trail already: the book was behind.</summary>
    public sealed record BookCaughtUp(string Job) : ShopEvent;
}
