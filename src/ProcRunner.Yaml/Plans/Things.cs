using ProcRunner.Problems;
using ProcRunner.Procedures;
using ProcRunner.Yaml.Trees;
using ProcRunner.Yaml.Values;

namespace ProcRunner.Yaml.Plans;

/// <summary>Everything that can move or be rested on: data, readings and worked-out values, which share one set of names.</summary>
internal sealed class Things(ValueReader values, ProblemLog log)
{
    private static readonly (string Ending, Reach Reach)[] Reaches =
    [
        (" at neighbours", Reach.Neighbours),
        (" everywhere", Reach.Everywhere),
    ];

    private readonly Dictionary<string, (bool OfHead, string What)> _known = new(StringComparer.Ordinal);

    /// <summary>Takes a name; false, with a problem, when something else has it or formulas keep it for themselves.</summary>
    public bool Add(string name, bool ofHead, string what, Place place)
    {
        if (FormulaName.Reserved.Contains(name, StringComparer.Ordinal))
        {
            log.Add("PR-P02", place, $"{Quoting.Of(name)} means something of its own in formulas; choose another name");
            return false;
        }

        if (_known.TryAdd(name, (ofHead, what)))
        {
            return true;
        }

        log.Add("PR-P02", place, $"{Quoting.Of(name)} is already {_known[name].What}; rename one of them");
        return false;
    }

    /// <summary>Adds a worked-out value, which several steps may give.</summary>
    public bool AddWorkedOut(string name, bool ofHead, Place place)
    {
        if (_known.TryGetValue(name, out (bool OfHead, string What) known) && known == (ofHead, "worked out"))
        {
            return true;
        }

        return Add(name, ofHead, "worked out", place);
    }

    /// <summary>The names of a rests-on list that exist.</summary>
    public IReadOnlyList<string> RestsOn(Node? node) =>
        [.. values.Names(node, "names").Where(name => Exists(name, ((Node.List)node!).Items))];

    /// <summary>A moves list.</summary>
    /// <param name="node">What stands in the file.</param>
    /// <param name="atPosition">Whether there is a position that "here" could mean.</param>
    public IReadOnlyList<Move> Moves(Node? node, bool atPosition)
    {
        List<Move> moves = [];
        foreach (Node item in values.List(node, "what moves"))
        {
            if (values.Text(item) is { } text && ReadMove(text, item.Place, atPosition) is { } move)
            {
                moves.Add(move);
            }
        }

        return moves;
    }

    private Move? ReadMove(string text, Place place, bool atPosition)
    {
        (string ending, Reach reach) = Reaches.FirstOrDefault(one =>
            text.EndsWith(one.Ending, StringComparison.Ordinal)
        );
        string name = ending is null ? text : text[..^ending.Length];
        if (!_known.TryGetValue(name, out (bool OfHead, string What) thing))
        {
            log.Add(
                "PR-P01",
                place,
                $"nothing that moves is called {Quoting.Of(name)}; {Quoting.Hint(name, _known.Keys)}"
            );
            return null;
        }

        if (thing.OfHead && reach == Reach.Neighbours)
        {
            log.Add("PR-P05", place, $"{Quoting.Of(name)} is of the head and has no neighbours; write '{name}'");
            return null;
        }

        if (!thing.OfHead && !atPosition && reach != Reach.Everywhere)
        {
            log.Add(
                "PR-P05",
                place,
                $"{Quoting.Of(name)} is of a position, and here is none; write '{name} everywhere'"
            );
            return null;
        }

        return new Move(name, reach);
    }

    private bool Exists(string name, IReadOnlyList<Node> items)
    {
        if (_known.ContainsKey(name))
        {
            return true;
        }

        Place place = items.First(item => item is Node.Scalar scalar && scalar.Text == name).Place;
        log.Add("PR-P01", place, $"nothing to rest on is called {Quoting.Of(name)}; {Quoting.Hint(name, _known.Keys)}");
        return false;
    }
}
