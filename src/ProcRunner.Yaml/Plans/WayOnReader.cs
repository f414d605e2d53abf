using ProcRunner.Procedures;
using ProcRunner.Yaml.Trees;
using ProcRunner.Yaml.Values;

namespace ProcRunner.Yaml.Plans;

/// <summary>Reads what can be done about a result out of spec.</summary>
internal sealed class WayOnReader(
    IReadOnlyList<StepDraft> steps,
    ProcedureNames names,
    Things things,
    ValueReader values,
    ProblemLog log
)
{
    private static readonly string[] WayKeys = ["back-to", "replaces", "decides", "moves"];

    /// <summary>The ways of a step whose result can be out of spec.</summary>
    public IReadOnlyList<WayOn> Read(StepDraft step)
    {
        string again = step.Kind == StepKind.Inspect ? "inspect again" : "measure again";
        Dictionary<string, WayKind> words = new(StringComparer.Ordinal)
        {
            [again] = WayKind.Again,
            ["concession"] = WayKind.Concession,
            ["scrap"] = WayKind.Scrap,
        };
        if (step.Keys.Find("ways-on") is not { } node)
        {
            return [Fixed(again, WayKind.Again), Fixed("scrap", WayKind.Scrap)];
        }

        List<WayOn> ways = [];
        HashSet<string> seen = new(StringComparer.Ordinal);
        IReadOnlyList<Node> items = values.List(node, "ways on");
        if (node is Node.List && items.Count == 0)
        {
            log.Add(
                "PR-P05",
                node.Place,
                "without a way on the work would stand still here for ever; name one at least"
            );
        }

        foreach (Node item in items)
        {
            if (ReadOne(item, step, words) is not { } way)
            {
                continue;
            }

            if (!seen.Add(way.Text))
            {
                log.Add("PR-P02", item.Place, $"the way on {Quoting.Of(way.Text)} stands here twice; keep one");
                continue;
            }

            ways.Add(way);
        }

        return ways;
    }

    private static WayOn Fixed(string text, WayKind kind) => new(text, kind, null, null, [], []);

    private WayOn? ReadOne(Node item, StepDraft step, Dictionary<string, WayKind> words)
    {
        if (item is Node.Scalar)
        {
            return ReadFixed(item, words);
        }

        if (item is not Node.Map { Entries: [var only] })
        {
            log.Add(
                "PR-Y08",
                item.Place,
                $"a way on is one of {Quoting.AnyOf([.. words.Keys])}, or 'NAME: {{back-to: STEP}}'"
            );
            return null;
        }

        if (values.Name(only.Key) is not { } text)
        {
            return null;
        }

        if (words.ContainsKey(text))
        {
            log.Add(
                "PR-P05",
                only.Key.Place,
                $"{Quoting.Of(text)} has its own meaning and takes no more; write '- {text}'"
            );
            return null;
        }

        if (Keys.Of(only.Value, "a way on", WayKeys, log) is not { } keys)
        {
            return null;
        }

        string? replaces = values.Name(keys.Find("replaces"));
        Node? target = keys.Require("back-to");
        return new WayOn(
            text,
            replaces is null ? WayKind.Rework : WayKind.Replace,
            values.Text(target) is { } name ? BackTo(name, target!, step) : null,
            replaces,
            ReadDecides(keys.Find("decides")),
            things.Moves(keys.Find("moves"), !step.OfHead)
        );
    }

    private WayOn? ReadFixed(Node item, Dictionary<string, WayKind> words)
    {
        if (values.Text(item) is not { } text)
        {
            return null;
        }

        if (words.TryGetValue(text, out WayKind kind))
        {
            return Fixed(text, kind);
        }

        log.Add(
            "PR-Y09",
            item.Place,
            $"{Quoting.Of(text)} alone says nothing; {Quoting.AnyOf([.. words.Keys])} does, or say where it leads: '{{back-to: STEP}}'"
        );
        return null;
    }

    private int? BackTo(string name, Node at, StepDraft from)
    {
        string[] parts = name.Split(" / ", 2);
        string stage = parts.Length == 2 ? parts[0] : from.Stage.Name;
        StepDraft? target = steps.FirstOrDefault(step => step.Stage.Name == stage && step.Name == parts[^1]);
        if (target is null)
        {
            IEnumerable<string> known = steps.Where(step => step.Stage == from.Stage).Select(step => step.Name);
            string hint = Quoting.Hint(name, [.. known, .. steps.Select(step => step.FullName)]);
            log.Add(
                "PR-P01",
                at.Place,
                $"no step is called {Quoting.Of(name)} ('STAGE / STEP' for one of another stage); {hint}"
            );
            return null;
        }

        if (Refusal(target, from) is { } why)
        {
            log.Add("PR-P06", at.Place, $"{Quoting.Of(name)} {why}; name an earlier step");
        }

        return target.Index;
    }

    private static string? Refusal(StepDraft target, StepDraft from) =>
        target.Index > from.Index ? "comes after this step, so the work can't go back to it"
        : from.OfHead && !target.OfHead ? "is done at each position, and this step is of the head: it can't tell which"
        : target.Kinds.Count > 0 && !from.OfHead && !IsWithin(from.Kinds, target.Kinds)
            ? "is for other kinds of position than this step"
        : target.Stage.AsFound && target.Reading is not null ? "records the head as it came and is never asked again"
        : null;

    // A step of no stated kind is for all kinds.
    private static bool IsWithin(IReadOnlyList<string> kinds, IReadOnlyList<string> of) =>
        kinds.Count > 0 && kinds.All(kind => of.Contains(kind, StringComparer.Ordinal));

    private List<KeyValuePair<string, string>> ReadDecides(Node? node)
    {
        List<KeyValuePair<string, string>> decides = [];
        foreach (Node.MapEntry entry in values.Entries(node, "decisions"))
        {
            string subject = entry.Key.Text;
            if (names.Decision(subject) is not { } choices)
            {
                log.Add(
                    "PR-P01",
                    entry.Key.Place,
                    $"no step decides about {Quoting.Of(subject)}; correct it or add a 'decide' step"
                );
                continue;
            }

            if (values.Name(entry.Value) is not { } choice)
            {
                continue;
            }

            if (!choices.Words.Contains(choice, StringComparer.Ordinal))
            {
                log.Add(
                    "PR-P01",
                    entry.Value.Place,
                    $"{Quoting.Of(choice)} is no choice of '{subject}'; {Quoting.Hint(choice, [.. choices.Words])}"
                );
                continue;
            }

            decides.Add(KeyValuePair.Create(subject, choice));
        }

        return decides;
    }
}
