using ProcRunner.Shop;
using ProcRunner.Trail;

namespace ProcRunner.Runs;

/// <summary>An entry that today's program would decide otherwise.</summary>
/// <param name="Entry">The entry's number.</param>
/// <param name="Then">What it says.</param>
/// <param name="Now">What the program says today.</param>
/// <param name="IsSame">True when it is the same, told in another unit or to other places: nothing is decided otherwise.</param>
public sealed record RedecidedEntry(long Entry, string Then, string Now, bool IsSame = false)
{
    private const int MostDifferences = 3;

    /// <summary>Decides an entry again, from the run and the shop as they stood before it; null when nothing differs.</summary>
    public static RedecidedEntry? Of(RunState before, ShopState shop, TrailEntry entry, IReadOnlyList<RunEvent> events)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(events);
        Json then = Json.ListOf([.. entry.Events]);
        if (CommandOf.Events(events) is not { } command)
        {
            return new(entry.Sequence, Names(entry.Events), "this program has no command that would lead to it");
        }

        Moment moment = new(entry.At.ToOffset(entry.Offset), entry.Operator, entry.Previous.ToString());
        if (RunDecider.Decide(before, shop, command, moment) is not Decision.Accepted accepted)
        {
            Decision.Refused refused = (Decision.Refused)RunDecider.Decide(before, shop, command, moment);
            return new(entry.Sequence, Names(entry.Events), "refused: " + refused.Why);
        }

        Json.Map[] again = [.. accepted.Events.Select(e => RunEventFormat.Write(before.Plan, e))];
        List<Difference> differences = [.. Differences("", then, Json.ListOf([.. again])).OrderBy(d => d.IsSame)];
        return differences.Count == 0
            ? null
            : new(
                entry.Sequence,
                string.Join("; ", differences.Take(MostDifferences).Select(d => d.Then)),
                string.Join("; ", differences.Take(MostDifferences).Select(d => d.Now)),
                differences.TrueForAll(d => d.IsSame)
            );
    }

    private static string Names(IEnumerable<Json.Map> events) =>
        string.Join(", ", events.Select(e => e.TextAt("e") ?? "?"));

    private static IEnumerable<Difference> Differences(string at, Json? then, Json? now)
    {
        if (then is Json.Map a && now is Json.Map b)
        {
            return a
                .Items.Select(i => i.Key)
                .Union(b.Items.Select(i => i.Key), StringComparer.Ordinal)
                .SelectMany(key => Differences(at.Length == 0 ? key : $"{at}, {key}", a[key], b[key]));
        }

        if (then is Json.List c && now is Json.List d)
        {
            return Enumerable
                .Range(0, Math.Max(c.Items.Length, d.Items.Length))
                .SelectMany(i =>
                    Differences(NameOf(at, c, d, i), c.Items.ElementAtOrDefault(i), d.Items.ElementAtOrDefault(i))
                );
        }

        bool isSame = then is Json.Text one && now is Json.Text other && SameTelling.Is(one.Value, other.Value);
        return Equals(then, now) ? [] : [new($"{at} {Text(then)}", $"{at} {Text(now)}", isSame)];
    }

    private static string NameOf(string at, Json.List then, Json.List now, int index)
    {
        Json? item = then.Items.ElementAtOrDefault(index) ?? now.Items.ElementAtOrDefault(index);
        string number = (index + 1).ToString(System.Globalization.CultureInfo.InvariantCulture);
        return (item as Json.Map)?.TextAt("e") ?? (at.Length == 0 ? number : $"{at} {number}");
    }

    private static string Text(Json? value) =>
        value is null ? "nothing" : System.Text.Encoding.UTF8.GetString(CanonicalJson.Write(value));

    private sealed record Difference(string Then, string Now, bool IsSame);
}
