using System.Security.Cryptography;
using System.Text;
using ProcRunner.People;
using ProcRunner.Quantities;
using ProcRunner.Shop;
using ProcRunner.Trail;

namespace ProcRunner.Tests.Shop;

public sealed class ShopStateTests
{
    private const string Job = "mzxw6ytboiaaaaaaaaaaaaaaaa";
    private static readonly Person Lead = Make("lead1", Role.Lead, "123456", null);
    private static readonly Person Worker = Make("p1", Role.Operator, "1234", new(Lead, "123456"));
    private static readonly Gauge Dial = new(
        "g1",
        "dial gauge",
        "depth gauge",
        new(0.0005m, Units.Inch),
        new(0.0004m, Units.Inch),
        new Quantity(0.100m, Units.Inch),
        new DateOnly(2027, 3, 1)
    );

    private static readonly SignedAct Act = new("lead1", "c2ln");

    private static readonly ShopEvent[] Events =
    [
        new ShopEvent.ShopFounded("Shop"),
        new ShopEvent.PersonAdded(Worker),
        new ShopEvent.PersonRetired("p1"),
        new ShopEvent.PinChanged("p1", Worker.WrappedKey),
        new ShopEvent.PersonChanged("p1", "Other Name", Role.Trainee, "Y2VydA==", Act),
        new ShopEvent.PersonLeft("p1", Act),
        new ShopEvent.PinSet("p1", Worker.WrappedKey, Act),
        new ShopEvent.PinReset("p1", "a2V5", Worker.WrappedKey, "Y2VydA==", Act),
        new ShopEvent.FirstLeadAnew(Lead with { Id = "lead2", CertifiedBy = "lead2" }, "both left", Act),
        new ShopEvent.PinRefused("p1", 3),
        new ShopEvent.PinAccepted("p1"),
        new ShopEvent.IdleSet(10, Act),
        new ShopEvent.ContactSet("a yard, no telephone", Act),
        new ShopEvent.GaugeAdded(Dial),
        new ShopEvent.GaugeChanged(Dial with { Turn = null, CalibratedUntil = null }),
        new ShopEvent.ReadoutSet(new(Units.Inch, 0.0005m, true, false, true, false)),
        new ShopEvent.JobAnchored(Job, 3, Digest.Of("3"u8), Anchor.SignedOff),
        new ShopEvent.JobClosedOut(Job, 9, Digest.Of("9"u8)),
        new ShopEvent.TornTailFound("shop", "book.trail.torn-1", 12, Digest.Of("t"u8)),
        new ShopEvent.BookCaughtUp(Job),
    ];

    public static TheoryData<ShopEvent> OneOfEach => [.. Events];

    [Theory]
    [MemberData(nameof(OneOfEach))]
    public void Each_event_is_read_back_equal(ShopEvent shopEvent)
    {
        Json written = ShopEventFormat.Write(shopEvent);
        var read = (Json.Map)CanonicalJson.Read(CanonicalJson.Write(written)).Value!;

        Assert.Equal(shopEvent, ShopEventFormat.Read(read));
    }

    // The stored shapes are a format: these lines may be added to, never changed.
    [Fact]
    public void Each_event_is_written_as_it_always_was()
    {
        var wrapped = new WrappedKey(600000, "c2FsdA==", "bm9uY2U=", "Ym94");
        var person = new Person("p1", "Made-up Name", Role.Trainee, "a2V5", wrapped, "lead1", "Y2VydA==");
        (ShopEvent Event, string Written)[] all =
        [
            (new ShopEvent.ShopFounded("Shop"), """{"e":"shop founded","name":"Shop"}"""),
            (
                new ShopEvent.PersonAdded(person),
                """{"by":"lead1","certificate":"Y2VydA==","e":"person added","id":"p1","key":"a2V5","name":"Made-up Name","role":"trainee","wrapped":{"nonce":"bm9uY2U=","rounds":600000,"salt":"c2FsdA==","sealed":"Ym94"}}"""
            ),
            (new ShopEvent.PersonRetired("p1"), """{"e":"person retired","id":"p1"}"""),
            (
                new ShopEvent.PinChanged("p1", wrapped),
                """{"e":"pin changed","id":"p1","wrapped":{"nonce":"bm9uY2U=","rounds":600000,"salt":"c2FsdA==","sealed":"Ym94"}}"""
            ),
            (
                new ShopEvent.PersonChanged("p1", "Other Name", Role.Trainee, "Y2VydA==", Act),
                """{"by":"lead1","certificate":"Y2VydA==","e":"person changed","id":"p1","name":"Other Name","role":"trainee","signature":"c2ln"}"""
            ),
            (new ShopEvent.PersonLeft("p1", Act), """{"by":"lead1","e":"person left","id":"p1","signature":"c2ln"}"""),
            (
                new ShopEvent.PinSet("p1", wrapped, Act with { By = "p1" }),
                """{"by":"p1","e":"pin set","id":"p1","signature":"c2ln","wrapped":{"nonce":"bm9uY2U=","rounds":600000,"salt":"c2FsdA==","sealed":"Ym94"}}"""
            ),
            (
                new ShopEvent.PinReset("p1", "a2V5", wrapped, "Y2VydA==", Act),
                """{"by":"lead1","certificate":"Y2VydA==","e":"pin reset","id":"p1","key":"a2V5","signature":"c2ln","wrapped":{"nonce":"bm9uY2U=","rounds":600000,"salt":"c2FsdA==","sealed":"Ym94"}}"""
            ),
            (
                new ShopEvent.FirstLeadAnew(
                    person with
                    {
                        Role = Role.Lead,
                        CertifiedBy = "p1",
                    },
                    "both left",
                    Act with
                    {
                        By = "p1",
                    }
                ),
                """{"by":"p1","certificate":"Y2VydA==","e":"first lead anew","id":"p1","key":"a2V5","name":"Made-up Name","reason":"both left","role":"lead","signature":"c2ln","wrapped":{"nonce":"bm9uY2U=","rounds":600000,"salt":"c2FsdA==","sealed":"Ym94"}}"""
            ),
            (new ShopEvent.PinRefused("p1", 3), """{"e":"pin refused","id":"p1","tries":3}"""),
            (new ShopEvent.PinAccepted("p1"), """{"e":"pin accepted","id":"p1"}"""),
            (new ShopEvent.IdleSet(10, Act), """{"by":"lead1","e":"idle set","minutes":10,"signature":"c2ln"}"""),
            (
                new ShopEvent.ContactSet("a yard, no telephone", Act),
                """{"by":"lead1","contact":"a yard, no telephone","e":"contact set","signature":"c2ln"}"""
            ),
            (
                new ShopEvent.GaugeAdded(Dial),
                """{"e":"gauge added","id":"g1","kind":"depth gauge","name":"dial gauge","resolution":"0.0005 in","turn":"0.100 in","uncertainty":"0.0004 in","until":"2027-03-01"}"""
            ),
            (
                new ShopEvent.GaugeChanged(Dial with { Turn = null, CalibratedUntil = null }),
                """{"e":"gauge changed","id":"g1","kind":"depth gauge","name":"dial gauge","resolution":"0.0005 in","turn":null,"uncertainty":"0.0004 in","until":null}"""
            ),
            (
                new ShopEvent.ReadoutSet(new(Units.Inch, 0.0005m, true, false, true, false)),
                """{"deeper":true,"diameter":false,"e":"readout set","preset":false,"step":"0.0005","steps":true,"unit":"in"}"""
            ),
            (
                new ShopEvent.JobOpened(Job, "2418", [Digest.Zero]),
                $$"""{"e":"job opened","job":"{{Job}}","stamp":"2418","texts":["{{Digest.Zero}}"]}"""
            ),
            (
                new ShopEvent.JobAnchored(Job, 3, Digest.Zero, Anchor.HandedOver),
                $$"""{"d":"{{Digest.Zero}}","e":"job anchored","job":"{{Job}}","n":3,"why":"handed over"}"""
            ),
            (
                new ShopEvent.JobClosedOut(Job, 9, Digest.Zero),
                $$"""{"d":"{{Digest.Zero}}","e":"job closed out","job":"{{Job}}","n":9}"""
            ),
            (
                new ShopEvent.TornTailFound(Job, "jobs/a.trail.torn-1", 12, Digest.Zero),
                $$"""{"d":"{{Digest.Zero}}","e":"torn tail found","file":"jobs/a.trail.torn-1","length":12,"of":"{{Job}}"}"""
            ),
            (new ShopEvent.BookCaughtUp(Job), $$"""{"e":"book caught up","job":"{{Job}}"}"""),
        ];

        Assert.All(
            all,
            pair =>
                Assert.Equal(
                    pair.Written,
                    Encoding.UTF8.GetString(CanonicalJson.Write(ShopEventFormat.Write(pair.Event)))
                )
        );
    }

    [Fact]
    public void A_job_opened_is_read_back()
    {
        var opened = new ShopEvent.JobOpened(Job, "2418", [Digest.Of("a"u8), Digest.Of("b"u8)]);
        var read = Assert.IsType<ShopEvent.JobOpened>(ShopEventFormat.Read(ShopEventFormat.Write(opened)));

        Assert.Equal((opened.Job, opened.Stamp), (read.Job, read.Stamp));
        Assert.Equal(opened.Texts.AsSpan(), read.Texts.AsSpan());
    }

    [Fact]
    public void An_event_without_one_of_its_parts_is_not_read()
    {
        foreach (ShopEvent shopEvent in Events)
        {
            Json.Map whole = ShopEventFormat.Write(shopEvent);
            foreach (KeyValuePair<string, Json> left in whole.Items.Where(pair => pair.Key is not ("turn" or "until")))
            {
                var pairs = whole.Items.Where(pair => pair.Key != left.Key).Select(pair => (pair.Key, pair.Value));
                Assert.Null(ShopEventFormat.Read(Json.MapOf([.. pairs])));
            }
        }
    }

    [Fact]
    public void The_book_folds_to_people_gauges_readout_and_jobs()
    {
        ShopState state = Fold(
            new ShopEvent.ShopFounded("Shop"),
            new ShopEvent.PersonAdded(Lead),
            new ShopEvent.PersonAdded(Worker),
            new ShopEvent.GaugeAdded(Dial),
            new ShopEvent.GaugeChanged(Dial with { Name = "other name" }),
            new ShopEvent.ReadoutSet(new(Units.Inch, 0.0005m, true, false, true, false)),
            new ShopEvent.JobOpened(Job, "2418", []),
            new ShopEvent.JobAnchored(Job, 1, Digest.Of("1"u8), Anchor.Opened),
            new ShopEvent.JobAnchored(Job, 4, Digest.Of("4"u8), Anchor.SignedOff),
            new ShopEvent.PersonRetired("p1")
        );

        Assert.Equal("lead1", state.Root?.Id);
        Assert.Equal("other name", state.Gauges["g1"].Name);
        Assert.Equal(Units.Inch, state.Readout?.Unit);
        Assert.Equal(new JobAnchor(4, Digest.Of("4"u8), Anchor.SignedOff), state.Jobs[Job].LastAnchor);
        Assert.False(state.Jobs[Job].IsClosedOut);
        Assert.Equal(DateTimeOffset.UnixEpoch, state.People["p1"].RetiredAt);
        Assert.Empty(state.Uncertified());
        Assert.Equal("2419", state.ProposeStamp());
        Assert.Equal("1001", ShopState.Empty.ProposeStamp());
    }

    [Fact]
    public void A_second_root_or_an_exchanged_key_is_not_believed()
    {
        Person forger = Make("aaa", Role.Lead, "123456", null);
        Person exchanged = Make("p1", Role.Operator, "1234", new(Lead, "123456"));
        Person hisMan = Make("zzz", Role.Operator, "1234", new(forger, "123456"));
        ShopState state = Fold(
            new ShopEvent.PersonAdded(Lead),
            new ShopEvent.PersonAdded(Worker),
            new ShopEvent.PersonAdded(forger),
            new ShopEvent.PersonAdded(hisMan),
            new ShopEvent.PersonAdded(exchanged)
        );

        Assert.Equal("lead1", state.RootId);
        Assert.Equal(Worker.PublicKey, state.People["p1"].PublicKey);
        Assert.Equal(["aaa", "zzz"], state.Uncertified());
    }

    private static ShopState Fold(params ShopEvent[] events)
    {
        var entry = new TrailEntry
        {
            Of = JobId.Shop,
            Sequence = 1,
            Previous = Digest.Zero,
            At = DateTimeOffset.UnixEpoch,
            Offset = TimeSpan.Zero,
            Operator = "",
            Bench = "b",
            Book = BookMark.None,
            Events = [.. events.Select(ShopEventFormat.Write)],
        };
        return ShopState.Empty.After(entry, Digest.Of("entry"u8));
    }

    private static Person Make(string id, Role role, string pin, Certifier? certifier) =>
        (
            (PersonMaking.Made)
                PersonKeys.Create(id, "Name of " + id, role, pin, 10, RandomNumberGenerator.Fill, certifier)
        ).Person;
}
