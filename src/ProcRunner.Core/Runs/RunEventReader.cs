using System.Globalization;
using ProcRunner.Quantities;
using ProcRunner.Trail;

namespace ProcRunner.Runs;

/// <summary>
/// Reads the parts of a stored event. What is missing or of another shape makes <see cref="Failed"/> true and gives a
/// stand-in, so that a reader is written as one expression and asked once at the end.
/// </summary>
internal sealed class RunEventReader(Plan plan, Json.Map map, RunEventReader? outer = null)
{
    private bool _failed;

    public bool Failed => _failed;

    public bool Has(string key) => map[key] is not (null or Json.Null);

    public string Text(string key) => map.TextAt(key) ?? Fail("");

    public bool Flag(string key) => map.FlagAt(key) ?? Fail(false);

    public IReadOnlyList<string> Texts(string key) =>
        map[key] is Json.List list
            ? [.. list.Items.Select(i => i is Json.Text t ? t.Value : Fail(""))]
            : Fail<string[]>([]);

    public T Word<T>(string key, Func<string, T?> find)
        where T : struct => find(Text(key)) ?? Fail(default(T));

    public Quantity Quantity(string key) =>
        Quantities.Quantity.TryParse(map.TextAt(key), out Quantity quantity) ? quantity : Fail(default(Quantity));

    public Quantity? QuantityOrNull(string key) => Has(key) ? Quantity(key) : null;

    public DateTimeOffset Time(string key) =>
        DateTimeOffset.TryParse(
            map.TextAt(key),
            CultureInfo.InvariantCulture,
            DateTimeStyles.AssumeUniversal,
            out DateTimeOffset time
        )
            ? time
            : Fail(default(DateTimeOffset));

    public RunEventReader Inner(string key) =>
        new(plan, map[key] is Json.Map inner ? inner : Fail(Json.MapOf()), outer ?? this);

    public IEnumerable<RunEventReader> Each(string key) =>
        map[key] is Json.List list
            ? list.Items.Select(i => new RunEventReader(
                plan,
                i is Json.Map inner ? inner : Fail(Json.MapOf()),
                outer ?? this
            ))
            : Fail<RunEventReader[]>([]);

    public At At() => new(Step("step"), Position("at"));

    public int Step(string key) => plan.TryStep(Text(key), out int step) ? step : Fail(0);

    public int Mover(string key) => Text(key).Length == 0 ? -1 : Step(key);

    public int Position(string key)
    {
        string name = Text(key);
        return name == "head" ? Runs.At.Head
            : plan.TryPosition(name, out int position) ? position
            : Fail(Runs.At.Head);
    }

    public int? PositionOrNull(string key) => Has(key) ? Position(key) : null;

    public IReadOnlyList<At> Places(string key) => [.. Each(key).Select(each => each.At())];

    public IReadOnlyList<StaleItem> Stale(string key) =>
        [
            .. Each(key)
                .Select(each =>
                    each.Has("of")
                        ? new StaleItem(each.Characteristic("of"), -1, each.Position("at"))
                        : new StaleItem(-1, each.Step("step"), each.Position("at"))
                ),
        ];

    public Mark Mark(string key)
    {
        RunEventReader mark = Inner(key);
        return new Mark(mark.Text("person"), mark.Text("name"), mark.Time("time"), mark.Text("signature"));
    }

    public Mark? MarkOrNull(string key) => Has(key) ? Mark(key) : null;

    private int Characteristic(string key) => plan.TryCharacteristic(Text(key), out int index) ? index : Fail(0);

    private T Fail<T>(T standIn)
    {
        _failed = true;
        if (outer is not null)
        {
            outer._failed = true;
        }

        return standIn;
    }
}
