using System.Collections.Frozen;
using ProcRunner.Procedures;
using ProcRunner.Yaml.Trees;
using ProcRunner.Yaml.Values;

namespace ProcRunner.Yaml.Plans;

/// <summary>What the build record shows, where a procedure calls it by a name of its own.</summary>
internal sealed class RecordReader(
    IReadOnlyList<Characteristic> values,
    HashSet<string> broken,
    IReadOnlyList<Step> steps,
    ValueReader reader,
    ProblemLog log
)
{
    private const string Builder = "for-the-builder";

    /// <summary>What is shown, to the value's name.</summary>
    public FrozenDictionary<string, string> Names { get; private set; } = FrozenDictionary<string, string>.Empty;

    /// <summary>Steps meant for whoever builds the engine.</summary>
    public IReadOnlyList<string> ForTheBuilder { get; private set; } = RecordRoles.ForTheBuilder;

    /// <summary>Reads it; what the file doesn't name goes by its usual name.</summary>
    public void Read(Node? node)
    {
        if (Keys.Of(node, "the build record", [.. RecordRoles.All.Select(r => r.Role), Builder], log) is not { } keys)
        {
            return;
        }

        Dictionary<string, string> names = new(StringComparer.Ordinal);
        foreach ((string role, bool ofHead) in RecordRoles.All)
        {
            if (keys.Find(role) is { } named && Value(named, ofHead) is { } name)
            {
                names[role] = name;
            }
        }

        Names = names.ToFrozenDictionary(StringComparer.Ordinal);
        if (keys.Find(Builder) is { } list)
        {
            ForTheBuilder = [.. Steps(list)];
        }
    }

    private string? Value(Node node, bool ofHead)
    {
        if (reader.Name(node) is not { } name || broken.Contains(name))
        {
            return null;
        }

        if (values.FirstOrDefault(v => v.Name == name) is not { } found)
        {
            string hint = Quoting.Hint(name, [.. values.Select(v => v.Name)]);
            log.Add("PR-P01", node.Place, $"no reading is called {Quoting.Of(name)}; {hint}");
            return null;
        }

        if (found.OfHead != ofHead)
        {
            string wanted = ofHead ? "one of the head" : "one of each position";
            log.Add("PR-Y09", node.Place, $"{Quoting.Of(name)} doesn't fit here: {wanted} is wanted");
            return null;
        }

        return name;
    }

    private IEnumerable<string> Steps(Node list)
    {
        foreach (string name in reader.Names(list, "steps"))
        {
            if (steps.Any(s => s.Name == name))
            {
                yield return name;
            }
            else
            {
                string hint = Quoting.Hint(name, [.. steps.Select(s => s.Name)]);
                log.Add("PR-P01", list.Place, $"no step is called {Quoting.Of(name)}; {hint}");
            }
        }
    }
}
