using ProcRunner.Core.Tests.Runs;
using ProcRunner.People;
using ProcRunner.Quantities;
using ProcRunner.Shop;
using ProcRunner.Testing;
using ProcRunner.Trail;

namespace ProcRunner.Core.Tests.Shop;

/// <summary>At least one of each event of the shop book. All invented.</summary>
internal static class ShopEventExamples
{
    private static readonly SignedAct Act = new("ada", "c2lnbmF0dXJl");

    public static IReadOnlyList<EventExample<ShopEvent>> All { get; } =
    [
        new(new ShopEvent.ShopFounded("a made-up shop"), "The store was made. It is the book's first event."),
        new(
            new ShopEvent.PersonAdded(Some.Person("ben", Role.Trainee)),
            "Someone may sign from now on. `key` is the public key, `wrapped` the private one behind the PIN, `certificate` the "
                + "signature of the lead `by` over id, name, role and key; the first lead's is their own. `role` is operator, "
                + "trainee or lead."
        ),
        new(
            new ShopEvent.PersonChanged("ben", "B. Example (invented)", Role.Operator, "Y2VydA==", Act),
            "Someone has another name or role from now on, certified anew by the lead `by`. In this and all events that have "
                + "one, `signature` is that person's over the event without it and the digest of the book's entry before: see "
                + "audit-trail.md."
        ),
        new(
            new ShopEvent.PersonLeft("ben", Act),
            "Someone has left; the lead `by` stands by it. What they signed before stays good."
        ),
        new(
            new ShopEvent.PersonRetired("ben"),
            "The same as it was once written, signed for by nobody. It is read and no longer written; verify tells it."
        ),
        new(
            new ShopEvent.PinSet("ben", Some.Wrapped("ben"), Act with { By = "ben" }),
            "Someone put their private key behind another PIN, and signed for it with it."
        ),
        new(
            new ShopEvent.PinChanged("ben", Some.Wrapped("ben")),
            "The same as it was once written, signed for by nobody. It is read and no longer written; verify tells it."
        ),
        new(
            new ShopEvent.PinReset("ben", "a2V5", Some.Wrapped("ben"), "Y2VydA==", Act),
            "Someone's PIN was lost: the lead `by` gave them a new key behind a new PIN. What the old key signed before stays "
                + "good; it signs nothing more."
        ),
        new(
            new ShopEvent.FirstLeadAnew(
                Some.Person("eve", Role.Lead) with
                {
                    CertifiedBy = "eve",
                },
                "the only lead has left and nobody knows the PIN",
                Act with
                {
                    By = "eve",
                }
            ),
            "No lead could sign any more, and whoever held the store's folder named a new first lead. They sign for themselves; "
                + "nobody before vouches for them, and verify says so for ever."
        ),
        new(
            new ShopEvent.PinRefused("ben", 3),
            "A wrong PIN was typed for someone; `tries` counts those in a row. The wait before the next one follows from it."
        ),
        new(new ShopEvent.PinAccepted("ben"), "After wrong PINs the right one was typed; the count begins anew."),
        new(
            new ShopEvent.IdleSet(10, Act),
            "After so many minutes without a key the screen asks who works; 0: never. The lead `by` stands by it."
        ),
        new(
            new ShopEvent.ContactSet("a yard by the river, no telephone", Act),
            "Where the shop is found and called, as it stands on its records from now on; empty: nothing. The lead `by` stands by it."
        ),
        new(
            new ShopEvent.GaugeAdded(Some.Gauge),
            "A gauge came into use. `uncertainty` is expanded with coverage factor 2, `turn` is one turn of the dial, `until` "
                + "the last day of its calibration."
        ),
        new(
            new ShopEvent.GaugeChanged(Some.Gauge with { Turn = null, CalibratedUntil = null }),
            "A gauge's data changed. `turn` is null without a dial that turns over, `until` when it isn't calibrated by date."
        ),
        new(
            new ShopEvent.ReadoutSet(new Readout(Units.Inch, 0.0005m, true, false, false, true)),
            "The machine's readout was set up or its set-up confirmed: unit, smallest step, whether the number grows deeper, "
                + "shows twice the travel (`diameter`), counts from the last reset (`steps`), and is preset to the reading at "
                + "touch-off rather than zeroed."
        ),
        new(
            new ShopEvent.ReadoutSet(new Readout(Units.Millimetre, 0.01m, false, true, true, false)),
            "In millimetres by hundredths, growing upward, with all four answered the other way."
        ),
        new(
            new ShopEvent.JobOpened(Some.Job, "EX-1", [Some.Digest("the procedure's text"), Some.Digest("the head's")]),
            "A job was opened under this id and stamp. `texts` are the digests of its procedure and head spec."
        ),
        new(
            new ShopEvent.JobAnchored(Some.Job, 41, Some.Digest("entry 41"), Anchor.SignedOff),
            "A job's trail had got to entry `n` with digest `d`, so that it can't be cut shorter unseen. `why` is opened, signed "
                + "off or handed over."
        ),
        new(
            new ShopEvent.JobClosedOut(Some.Job, 99, Some.Digest("entry 99")),
            "A job was closed out with entry `n`; nothing may follow in its trail."
        ),
        new(
            new ShopEvent.TornTailFound(Some.Job, $"jobs/{Some.Job}.torn-1", 17, Some.Digest("half a line")),
            "The end of the trail `of` wasn't a whole line and was put aside to `file`: `length` bytes with digest `d`."
        ),
        new(
            new ShopEvent.BookCaughtUp(Some.Job),
            "What this entry says of the job stood in the job's trail already: the book was behind, as after a power cut."
        ),
    ];
}
