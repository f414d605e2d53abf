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

    /// <summary>Someone may sign from now on; the first of all is the first lead.</summary>
    public sealed record PersonAdded(Person Person) : ShopEvent;

    /// <summary>Someone has another name or role from now on, certified anew by a lead.</summary>
    public sealed record PersonChanged(string Id, string Name, Role Role, string Certificate, SignedAct Act)
        : ShopEvent;

    /// <summary>Someone has left; the entry's time is when.</summary>
    public sealed record PersonLeft(string Id, SignedAct Act) : ShopEvent;

    /// <summary>Someone put their key behind another PIN, and signed for it themselves.</summary>
    public sealed record PinSet(string Id, WrappedKey WrappedKey, SignedAct Act) : ShopEvent;

    /// <summary>A lead gave someone a new key behind a new PIN. What the old key signed stays good.</summary>
    public sealed record PinReset(string Id, string PublicKey, WrappedKey WrappedKey, string Certificate, SignedAct Act)
        : ShopEvent;

    /// <summary>
    /// Whoever holds the store's folder named a new first lead, because no lead could sign any more. Nobody before vouches for
    /// them; they sign for themselves.
    /// </summary>
    public sealed record FirstLeadAnew(Person Person, string Reason, SignedAct Act) : ShopEvent;

    /// <summary>A wrong PIN was typed for someone, so many in a row.</summary>
    public sealed record PinRefused(string Id, long InARow) : ShopEvent;

    /// <summary>After wrong PINs the right one was typed.</summary>
    public sealed record PinAccepted(string Id) : ShopEvent;

    /// <summary>After so many minutes without a key the screen asks who works; 0: never.</summary>
    public sealed record IdleSet(long Minutes, SignedAct Act) : ShopEvent;

    /// <summary>Where the shop is found and called, as it stands on its records from now on; empty: nothing stands there.</summary>
    public sealed record ContactSet(string Contact, SignedAct Act) : ShopEvent;

    /// <summary>Someone has left, as no program writes it any more: nobody signed for it.</summary>
    public sealed record PersonRetired(string Id) : ShopEvent;

    /// <summary>Someone's key is behind another PIN, as no program writes it any more: nobody signed for it.</summary>
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
