using ProcRunner.Problems;
using ProcRunner.Yaml.Trees;

namespace ProcRunner.Yaml.Values;

/// <summary>Keys of one map, each known; those that aren't known have been reported.</summary>
internal sealed class Keys
{
    private readonly Node.Map _map;
    private readonly string _of;
    private readonly ProblemLog _log;

    private Keys(Node.Map map, string of, ProblemLog log)
    {
        _map = map;
        _of = of;
        _log = log;
    }

    public Place Place => _map.Place;

    /// <summary>The keys of a node, or null with a problem when it is no map. A null node is silent.</summary>
    /// <param name="node">What stands in the file.</param>
    /// <param name="of">Whose keys, for messages: <c>a limit</c>.</param>
    /// <param name="known">The keys there are.</param>
    /// <param name="log">Takes the problems.</param>
    public static Keys? Of(Node? node, string of, IReadOnlyList<string> known, ProblemLog log)
    {
        if (node is not Node.Map map)
        {
            if (node is not null)
            {
                log.Add("PR-Y08", node.Place, $"{of} is written as keys with values; here stands {node.Shape}");
            }

            return null;
        }

        foreach (Node.MapEntry entry in map.Entries)
        {
            if (!known.Contains(entry.Key.Text, StringComparer.Ordinal))
            {
                // Between braces a comma ends a value, so 0,310 reads as 0 and a key 310.
                string hint = entry.Key.Text.All(char.IsAsciiDigit)
                    ? "a comma ends a value here, and a decimal has a point"
                    : Quoting.Hint(entry.Key.Text, known);
                log.Add("PR-Y06", entry.Key.Place, $"{of} has no key {Quoting.Of(entry.Key.Text)}; {hint}");
            }
        }

        return new Keys(map, of, log);
    }

    /// <summary>The value of a key, or null when it isn't there.</summary>
    public Node? Find(string key) => _map.Find(key);

    /// <summary>Where a key stands; the map's place when it isn't there.</summary>
    public Place PlaceOf(string key) => _map.Entries.FirstOrDefault(entry => entry.Key.Text == key)?.Key.Place ?? Place;

    /// <summary>The value of a key, or null with a problem when it isn't there.</summary>
    public Node? Require(string key)
    {
        Node? value = Find(key);
        if (value is null)
        {
            _log.Add("PR-Y07", Place, $"{_of} needs the key '{key}'; add it");
        }

        return value;
    }
}
