using ProcRunner.Core.Tests.Shop;
using ProcRunner.Runs;
using ProcRunner.Shop;
using ProcRunner.Testing;
using ProcRunner.Trail;

namespace ProcRunner.Core.Tests.Runs;

/// <summary>Stored events are a format: each has an example, reads back as it was, and keeps its shape.</summary>
public class EventCatalogueTests
{
    public static TheoryData<int> RunExamples => [.. Enumerable.Range(0, RunEventExamples.All.Count)];

    public static TheoryData<int> ShopExamples => [.. Enumerable.Range(0, ShopEventExamples.All.Count)];

    [Fact]
    public void The_catalogue_shows_what_is_stored() =>
        Golden.MatchFile(EventCataloguePage.Write(), "docs/event-catalogue.md");

    [Fact]
    public void Every_name_of_a_run_event_has_an_example() =>
        Assert.Equal(
            RunEventFormat.Names.Order(StringComparer.Ordinal),
            RunEventExamples.All.Select(e => NameOf(Write(e.Event))).Distinct().Order(StringComparer.Ordinal)
        );

    [Fact]
    public void Every_kind_of_event_has_an_example()
    {
        Assert.Equal(KindsOf<RunEvent>(), Kinds(RunEventExamples.All.Select(e => e.Event.GetType())));
        Assert.Equal(KindsOf<ShopEvent>(), Kinds(ShopEventExamples.All.Select(e => e.Event.GetType())));
    }

    [Fact]
    public void Two_kinds_of_event_never_share_a_name()
    {
        Assert.All(
            RunEventExamples.All.GroupBy(e => NameOf(Write(e.Event)), e => e.Event.GetType()),
            kinds => Assert.Single(kinds.Distinct())
        );
        Assert.All(
            ShopEventExamples.All.GroupBy(e => NameOf(ShopEventFormat.Write(e.Event)), e => e.Event.GetType()),
            kinds => Assert.Single(kinds.Distinct())
        );
    }

    [Theory]
    [MemberData(nameof(RunExamples))]
    public void A_run_event_reads_back_as_it_was(int index)
    {
        RunEvent written = RunEventExamples.All[index].Event;

        RunEvent? read = RunEventFormat.Read(SmallPlan.Joined, Stored(Write(written)));

        // Lists inside make records unequal by reference: compared part by part, and by what would be written again.
        Assert.IsType(written.GetType(), read);
        Assert.Equivalent(written, read, strict: true);
        Assert.Equal(Write(written), Write(read!));
    }

    [Theory]
    [MemberData(nameof(ShopExamples))]
    public void A_shop_event_reads_back_as_it_was(int index)
    {
        ShopEvent written = ShopEventExamples.All[index].Event;

        ShopEvent? read = ShopEventFormat.Read(Stored(ShopEventFormat.Write(written)));

        Assert.IsType(written.GetType(), read);
        Assert.Equivalent(written, read, strict: true);
        Assert.Equal(ShopEventFormat.Write(written), ShopEventFormat.Write(read!));
    }

    [Theory]
    [MemberData(nameof(RunExamples))]
    public void A_run_event_that_lacks_a_key_is_not_guessed(int index) =>
        Assert.All(
            WithoutOneKey(Write(RunEventExamples.All[index].Event)),
            less => Assert.Null(RunEventFormat.Read(SmallPlan.Joined, less))
        );

    [Theory]
    [MemberData(nameof(ShopExamples))]
    public void A_shop_event_that_lacks_a_key_is_not_guessed(int index) =>
        Assert.All(
            WithoutOneKey(ShopEventFormat.Write(ShopEventExamples.All[index].Event)),
            less => Assert.Null(ShopEventFormat.Read(less))
        );

    private static IEnumerable<Json.Map> WithoutOneKey(Json.Map whole) =>
        from item in whole.Items
        where !MayLack(NameOf(whole), item.Key)
        select new Json.Map([.. whole.Items.Where(i => i.Key != item.Key).Select(i => (i.Key, i.Value))]);

    // What may be null or nothing may be absent as well.
    private static bool MayLack(string name, string key) =>
        (name, key)
            is
                ("signed off" or "job released", "beside")
                or
                ("conceded" or "head scrapped", "covers")
                or
                ("limit chosen", "at" or "low" or "aim" or "high")
                or
                ("noted", "step" or "at")
                or
                ("change reported", "at")
                or
                ("gauge added" or "gauge changed", "turn" or "until");

    private static Json.Map Write(RunEvent happened) => RunEventFormat.Write(SmallPlan.Joined, happened);

    private static string NameOf(Json.Map map) => map.TextAt("e")!;

    private static Json.Map Stored(Json.Map map) =>
        Assert.IsType<Json.Map>(CanonicalJson.Read(CanonicalJson.Write(map)).Value);

    private static IEnumerable<string> KindsOf<T>() =>
        Kinds(typeof(T).GetNestedTypes().Where(t => t.IsSubclassOf(typeof(T))));

    private static IEnumerable<string> Kinds(IEnumerable<Type> types) =>
        types.Select(type => type.Name).Distinct().Order(StringComparer.Ordinal);
}
