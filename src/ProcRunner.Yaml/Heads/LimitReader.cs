using ProcRunner.Problems;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Yaml.Trees;
using ProcRunner.Yaml.Values;

namespace ProcRunner.Yaml.Heads;

/// <summary>
/// Reads one limit and holds it to what a limit must be: an origin, ends of one kind in order, two units that agree, a
/// wear limit no tighter than the range when new.
/// </summary>
internal sealed class LimitReader(Unit length, ValueReader values, ProblemLog log)
{
    private static readonly string[] LimitKeys =
    [
        "low",
        "aim",
        "high",
        "also",
        "governs",
        "worn",
        "origin",
        "note",
        "ask",
    ];
    private static readonly string[] EndKeys = ["low", "aim", "high"];

    /// <summary>Whether a value is a limit by the look of its keys, rather than limits of a kind.</summary>
    public static bool LooksLikeLimit(Node node) =>
        node is not Node.Map { Entries.Count: > 0 } map
        || map.Entries.Any(entry => LimitKeys.Contains(entry.Key.Text, StringComparer.Ordinal))
        || !map.Entries.All(entry => entry.Value is Node.Map);

    /// <summary>The limit, and its wear limit as a limit of its own named <c>NAME worn</c>; nothing when it can't be read.</summary>
    public IEnumerable<Limit> Read(string name, Node node)
    {
        if (Keys.Of(node, "a limit", LimitKeys, log) is not { } keys)
        {
            return [];
        }

        return keys.Find("ask") is { } ask ? ReadAsked(name, keys, ask) : ReadKnown(name, keys);
    }

    private IEnumerable<Limit> ReadAsked(string name, Keys keys, Node ask)
    {
        foreach (string key in LimitKeys.Except(["ask", "note", "origin"], StringComparer.Ordinal))
        {
            if (keys.Find(key) is not null)
            {
                log.Add(
                    "PR-Y06",
                    keys.PlaceOf(key),
                    $"a limit that is asked for in the run has no '{key}'; take out 'ask' or '{key}'"
                );
            }
        }

        string? note = values.Text(keys.Find("note"));
        Origin origin = values.OneOf(keys.Find("origin"), OriginWords.Table) ?? Origin.Shop;
        return values.Text(ask) is { } why ? [new Limit(name, null, null, null, origin, note ?? "", why)] : [];
    }

    private IEnumerable<Limit> ReadKnown(string name, Keys keys)
    {
        Ends main = ReadEnds(keys);
        if (keys.Find("origin") is null)
        {
            log.Add("PR-H01", keys.Place, $"the limit '{name}' doesn't say where it comes from; add {OriginHint}");
        }

        Origin? origin = values.OneOf(keys.Find("origin"), OriginWords.Table);
        string note = values.Text(keys.Find("note")) ?? "";
        Ends? also = keys.Find("also") is { } second
            ? Keys.Of(second, "a limit's second unit", EndKeys, log) is { } alsoKeys
                ? ReadEnds(alsoKeys)
                : null
            : null;
        if (also is not null)
        {
            Compare(name, main, also);
        }

        Ends governing = Govern(keys, main, also);
        if (governing is { Low: null, High: null } && keys.Find("low") is null && keys.Find("high") is null)
        {
            log.Add(
                "PR-H08",
                keys.Place,
                $"the limit '{name}' says nothing; give it low, high or both, or 'ask' with why"
            );
            return [];
        }

        if (!InOrder(name, main) | (also is not null && !InOrder(name, also)) || !InOrder(name, governing))
        {
            return [];
        }

        Ends? worn = ReadWorn(name, keys, governing);
        if (origin is null)
        {
            return [];
        }

        Limit limit = new(
            name,
            governing.Low?.Value,
            governing.Aim?.Value,
            governing.High?.Value,
            origin.Value,
            note,
            null
        );
        return worn is null
            ? [limit]
            : [limit, new Limit($"{name} worn", worn.Low?.Value, null, worn.High?.Value, origin.Value, note, null)];
    }

    private static string OriginHint => $"'origin: {Quoting.AnyOf([.. OriginWords.Table.Keys])}'";

    private Ends ReadEnds(Keys keys) => new(ReadEnd(keys, "low"), ReadEnd(keys, "aim"), ReadEnd(keys, "high"));

    private End? ReadEnd(Keys keys, string key) =>
        keys.Find(key) is { } node && values.Quantity(node, length) is { } value
            ? new End(key, value, node.Place)
            : null;

    /// <summary>Reports each end that says one thing in one unit and another in the other.</summary>
    private void Compare(string name, Ends main, Ends also)
    {
        foreach ((End? first, End? second) in main.All.Zip(also.All))
        {
            if (first is null || second is null || !SameKind(name, first, second))
            {
                continue;
            }

            if (!DigitInterval.Of(first.Value).Overlaps(DigitInterval.Of(second.Value)))
            {
                log.Add(
                    "PR-H03",
                    second.Place,
                    $"'{name}' {first.Key} is {first.Value} and also {second.Value}, but {first.Value} is {InUnitOf(first.Value, second.Value)}; correct the one that is wrong"
                );
            }
        }
    }

    private Ends Govern(Keys keys, Ends main, Ends? also)
    {
        if (keys.Find("governs") is not { } node)
        {
            return also is null ? main : main.Over(also);
        }

        Unit? unit = values.UnitOf(node);
        if (unit is null || also is null)
        {
            if (also is null)
            {
                log.Add(
                    "PR-Y06",
                    node.Place,
                    "'governs' chooses between two units; without 'also' there is one: take it out"
                );
            }

            return main;
        }

        if (also.Present.Any() && also.Present.All(end => ReferenceEquals(end.Value.Unit, unit)))
        {
            return also.Over(main);
        }

        if (!main.Present.Any(end => ReferenceEquals(end.Value.Unit, unit)))
        {
            log.Add(
                "PR-Y09",
                node.Place,
                $"the limit is written in neither place in {unit.Symbol}; name the unit that governs"
            );
        }

        return main.Over(also);
    }

    private bool InOrder(string name, Ends ends)
    {
        End[] present = [.. ends.Present];
        bool good = true;
        for (int i = 1; i < present.Length; i++)
        {
            if (!SameKind(name, present[i - 1], present[i]))
            {
                return false;
            }

            if (present[i - 1].Value.CompareTo(present[i].Value) > 0)
            {
                log.Add(
                    "PR-H02",
                    present[i].Place,
                    $"'{name}' has {present[i - 1].Key} {present[i - 1].Value} above {present[i].Key} {present[i].Value}; turn them round or correct one"
                );
                good = false;
            }
        }

        return good;
    }

    private bool SameKind(string name, End first, End second)
    {
        if (first.Value.Dimension == second.Value.Dimension)
        {
            return true;
        }

        log.Add(
            "PR-H04",
            second.Place,
            $"'{name}' has {first.Key} {first.Value}, a {first.Value.Dimension}, and {second.Key} {second.Value}, a {second.Value.Dimension}; both must be of one kind"
        );
        return false;
    }

    private Ends? ReadWorn(string name, Keys keys, Ends fresh)
    {
        if (
            keys.Find("worn") is not { } node
            || Keys.Of(node, "a wear limit", ["low", "high"], log) is not { } wornKeys
        )
        {
            return null;
        }

        Ends worn = new(ReadEnd(wornKeys, "low"), null, ReadEnd(wornKeys, "high"));
        if (worn is { Low: null, High: null })
        {
            log.Add("PR-H08", node.Place, $"the wear limit of '{name}' says nothing; give it low or high");
            return null;
        }

        Tighter(name, worn.Low, fresh.Low, sign: 1);
        Tighter(name, worn.High, fresh.High, sign: -1);
        return worn.Over(new Ends(fresh.Low, null, fresh.High));
    }

    private void Tighter(string name, End? worn, End? fresh, int sign)
    {
        if (worn is null || fresh is null || !SameKind(name, fresh, worn))
        {
            return;
        }

        if (worn.Value.CompareTo(fresh.Value) * sign > 0)
        {
            log.Add(
                "PR-H07",
                worn.Place,
                $"'{name}' may wear to {worn.Key} {worn.Value}, which is tighter than {fresh.Key} {fresh.Value} when new; correct the one that is wrong"
            );
        }
    }

    private static string InUnitOf(Quantity value, Quantity other) =>
        value.TryConvert(other.Unit, Math.Min(28, other.Value.Scale + 2), Rounding.Nearest, out Quantity converted)
            ? converted.ToString()
            : "another amount";

    private sealed record End(string Key, Quantity Value, Place Place);

    private sealed record Ends(End? Low, End? Aim, End? High)
    {
        public IEnumerable<End?> All => [Low, Aim, High];

        public IEnumerable<End> Present => All.OfType<End>();

        public Ends Over(Ends other) => new(Low ?? other.Low, Aim ?? other.Aim, High ?? other.High);
    }
}
