using ProcRunner.Problems;

namespace ProcRunner.Procedures.Checks;

/// <summary>
/// Finds values that rest on each other in a circle: then no order of taking them would leave all of them good.
/// </summary>
internal sealed class CircleCheck(Procedure procedure, SourcePlaces places, string file)
{
    // Searching from each value again is only bearable for a few; a file with more circles shows these first.
    private const int MostSearches = 50;

    private readonly Dictionary<string, HashSet<string>> _restsOn = OnlyCircles(RestsOn(procedure));
    private readonly HashSet<string> _done = new(StringComparer.Ordinal);

    public IEnumerable<Problem> Run()
    {
        IEnumerable<Characteristic> left = procedure.Characteristics.Where(one => _restsOn.ContainsKey(one.Name));
        foreach (Characteristic start in left.Take(MostSearches))
        {
            if (!_done.Contains(start.Name) && Circle(start.Name) is { } circle)
            {
                _done.UnionWith(circle);
                string way = string.Join(" rests on ", circle.Append(circle[0]));
                yield return new Problem(
                    "PR-P04",
                    places.Of(start, new Place(file, 0, 0)),
                    $"these go round in a circle: {way}; take one of these dependences out"
                );
            }
        }
    }

    /// <summary>A shortest way from a value back to itself, or null. Breadth first, so nothing nests.</summary>
    private List<string>? Circle(string start)
    {
        Dictionary<string, string> cameFrom = new(StringComparer.Ordinal);
        Queue<string> open = new([start]);
        while (open.TryDequeue(out string? name))
        {
            foreach (string next in _restsOn.GetValueOrDefault(name) ?? [])
            {
                if (next == start)
                {
                    return Way(start, name, cameFrom);
                }

                if (cameFrom.TryAdd(next, name))
                {
                    open.Enqueue(next);
                }
            }
        }

        return null;
    }

    private static List<string> Way(string start, string last, Dictionary<string, string> cameFrom)
    {
        List<string> way = [];
        for (string at = last; at != start; at = cameFrom[at])
        {
            way.Add(at);
        }

        way.Add(start);
        way.Reverse();
        return way;
    }

    private static Dictionary<string, HashSet<string>> RestsOn(Procedure procedure)
    {
        Dictionary<string, HashSet<string>> all = new(StringComparer.Ordinal);
        foreach (Characteristic characteristic in procedure.Characteristics)
        {
            all[characteristic.Name] = new HashSet<string>(characteristic.RestsOn, StringComparer.Ordinal);
        }

        foreach (WorkOut work in procedure.Steps.SelectMany(step => step.Taking?.WorksOut ?? []))
        {
            if (all.TryGetValue(work.Name, out HashSet<string>? restsOn))
            {
                restsOn.UnionWith(
                    work.Formula.Names.Select(name => FormulaName.Parse(name)?.ReadsNow).OfType<string>()
                );
            }
        }

        return all;
    }

    /// <summary>Drops every value that rests on nothing that is left, until only circles and what rests on them are left.</summary>
    private static Dictionary<string, HashSet<string>> OnlyCircles(Dictionary<string, HashSet<string>> all)
    {
        ILookup<string, string> readers = all.SelectMany(one => one.Value.Select(on => (on, one.Key)))
            .ToLookup(pair => pair.on, pair => pair.Key, StringComparer.Ordinal);
        foreach (HashSet<string> restsOn in all.Values)
        {
            restsOn.RemoveWhere(name => !all.ContainsKey(name));
        }

        Queue<string> free = new(all.Where(one => one.Value.Count == 0).Select(one => one.Key));
        while (free.TryDequeue(out string? name))
        {
            all.Remove(name);
            foreach (string reader in readers[name])
            {
                if (all.TryGetValue(reader, out HashSet<string>? restsOn) && restsOn.Remove(name) && restsOn.Count == 0)
                {
                    free.Enqueue(reader);
                }
            }
        }

        return all;
    }
}
