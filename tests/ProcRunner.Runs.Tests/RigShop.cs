using System.Security.Cryptography;
using ProcRunner.People;
using ProcRunner.Quantities;
using ProcRunner.Shop;

namespace ProcRunner.Runs.Tests;

/// <summary>An invented shop: a lead, an operator, a trainee, one gauge of each kind, a readout. PINs are the tests' own.</summary>
internal static class RigShop
{
    public const string Lead = "lead";
    public const string Worker = "op";
    public const string Trainee = "new";
    public const string Gone = "gone";

    private const string LeadPin = "123456";
    private const string Pin = "1234";

    /// <summary>Inches by 0.0005, growing deeper, one fixed zero, zeroed at touch-off.</summary>
    public static Readout Readout { get; } =
        new(Units.Inch, 0.0005m, GrowsDeeper: true, ShowsDiameter: false, StepMode: false, Preset: false);

    /// <summary>The shop; keys behind one round of PBKDF2, for speed.</summary>
    public static ShopState State { get; } = Make();

    /// <summary>The same shop with gauges whose dials turn over every 0.025 in.</summary>
    public static ShopState WithTurns { get; } =
        State.Gauges.Values.Aggregate(State, (shop, gauge) => shop.With(gauge with { Turn = Q("0.025 in") }));

    public static string PinOf(string person) => person is Lead or Gone ? LeadPin : Pin;

    public static Gauge Gauge(string kind, string uncertainty, string? until = null) =>
        new(
            kind + "-1",
            "made-up " + kind,
            kind,
            Q("0.0001 in"),
            Q(uncertainty),
            null,
            until is null ? null : DateOnly.Parse(until, System.Globalization.CultureInfo.InvariantCulture)
        );

    public static ShopState With(this ShopState shop, Gauge gauge) =>
        shop with
        {
            Gauges = shop.Gauges.SetItem(gauge.Id, gauge),
        };

    public static Quantity Q(string text) =>
        Quantity.TryParse(text, out Quantity quantity) ? quantity : throw new ArgumentException(text, nameof(text));

    private static ShopState Make()
    {
        Person lead = Person(Lead, Role.Lead, null);
        Certifier by = new(lead, LeadPin);
        Person gone = Person(Gone, Role.Lead, by) with { RetiredAt = DateTimeOffset.UnixEpoch };
        ShopState shop = ShopState.Empty with { Name = "made-up shop", RootId = Lead, Readout = Readout };
        foreach (
            Person person in new[] { lead, Person(Worker, Role.Operator, by), Person(Trainee, Role.Trainee, by), gone }
        )
        {
            shop = shop with { People = shop.People.SetItem(person.Id, person) };
        }

        foreach (string kind in new[] { "micrometer", "bore", "depth", "indicator", "caliper", "tester" })
        {
            shop = shop.With(Gauge(kind, "0.00005 in"));
        }

        return shop;
    }

    private static Person Person(string id, Role role, Certifier? by) =>
        (
            (PersonMaking.Made)
                PersonKeys.Create(
                    id,
                    "made-up " + id,
                    role,
                    role == Role.Lead ? LeadPin : Pin,
                    1,
                    RandomNumberGenerator.Fill,
                    by
                )
        ).Person;
}
