using ProcRunner.Problems;
using ProcRunner.Procedures;
using ProcRunner.Yaml.Heads;
using ProcRunner.Yaml.Trees;
using ProcRunner.Yaml.Values;

namespace ProcRunner.Yaml.Plans;

/// <summary>Goes through the stages a first time, for the names of steps and where they are done.</summary>
internal sealed class DraftReader(IReadOnlyList<Characteristic> readings, ValueReader values, ProblemLog log)
{
    private static readonly Dictionary<string, Walk> Walks = new(StringComparer.Ordinal)
    {
        ["by position"] = Walk.ByPosition,
        ["by step"] = Walk.ByStep,
        ["by kind"] = Walk.ByKind,
    };

    private static readonly string[] SignalWords = ["danger", "warning", "caution", "notice"];

    private readonly List<StageDraft> _stages = [];
    private int _steps;

    /// <summary>True when a step couldn't even be told apart, so that nothing can be said about the order of steps.</summary>
    public bool Lost { get; private set; }

    public IReadOnlyList<StageDraft> Read(Node? node)
    {
        IReadOnlyList<Node> items = values.List(node, "stages");
        if (node is Node.List && items.Count == 0)
        {
            log.Add("PR-Y07", node.Place, "a procedure needs at least one stage; add '- stage: NAME'");
        }

        foreach (Node item in items)
        {
            ReadStage(item);
        }

        return _stages;
    }

    public IReadOnlyList<Caution> Cautions(Node? node)
    {
        List<Caution> cautions = [];
        foreach (Node item in values.List(node, "cautions"))
        {
            if (item is not Node.Map { Entries: [var only] })
            {
                log.Add(
                    "PR-Y08",
                    item.Place,
                    "a caution is written as one signal word and its text, as in 'warning: rotating cutter'"
                );
            }
            else if (!SignalWords.Contains(only.Key.Text, StringComparer.Ordinal))
            {
                log.Add(
                    "PR-Y09",
                    only.Key.Place,
                    $"{Quoting.Of(only.Key.Text)} is no signal word; {Quoting.AnyOf(SignalWords)} is wanted"
                );
            }
            else if (values.Text(only.Value) is { } text)
            {
                cautions.Add(new Caution(only.Key.Text.ToUpperInvariant(), text));
            }
        }

        return cautions;
    }

    private void ReadStage(Node item)
    {
        if (Keys.Of(item, "a stage", ["stage", "walk", "as-found", "cautions", "steps"], log) is not { } keys)
        {
            Lost = true;
            return;
        }

        string? name = values.Name(keys.Require("stage"));
        if (name is not null && _stages.Any(stage => stage.Name == name))
        {
            log.Add(
                "PR-P02",
                keys.PlaceOf("stage"),
                $"there is already a stage {Quoting.Of(name)}; rename one of them"
            );
        }

        StageDraft stage = new(
            _stages.Count,
            name ?? "?",
            values.OneOf(keys.Find("walk"), Walks) ?? Walk.ByPosition,
            values.YesNo(keys.Find("as-found")) ?? false,
            Cautions(keys.Find("cautions"))
        );
        _stages.Add(stage);
        Node? steps = keys.Require("steps");
        IReadOnlyList<Node> items = values.List(steps, "steps");
        if (steps is null or Node.List && items.Count == 0)
        {
            Lost = true;
            if (steps is not null)
            {
                log.Add("PR-Y07", steps.Place, "a stage needs at least one step; add one");
            }
        }

        foreach (Node step in items)
        {
            if (ReadStep(step, stage) is { } draft)
            {
                stage.Steps.Add(draft);
            }
            else
            {
                Lost = true;
            }
        }
    }

    private StepDraft? ReadStep(Node node, StageDraft stage)
    {
        if (Keys.Of(node, "a step", StepKind.AllKeys, log) is not { } keys)
        {
            return null;
        }

        StepKind[] kinds = [.. StepKind.All.Where(kind => keys.Find(kind.Word) is not null)];
        if (kinds.Length == 0)
        {
            string words = Quoting.AnyOf([.. StepKind.All.Select(kind => kind.Word)]);
            log.Add("PR-Y07", node.Place, $"a step says what kind it is with one of the keys {words}; add one");
            return null;
        }

        // A cut names its zero by the key that makes a step a zero.
        StepKind is_ = kinds[0];
        foreach (StepKind second in kinds.Skip(1).Where(kind => kind != StepKind.Zero || is_ != StepKind.Cut))
        {
            log.Add(
                "PR-P05",
                keys.PlaceOf(second.Word),
                $"a step is of one kind: this is a '{is_.Word}', so '{second.Word}' begins a step of its own"
            );
        }

        RefuseUseless(node, keys, is_);
        string? subject = SubjectOf(keys, is_);
        return subject is null ? null : Draft(keys, stage, is_, subject);
    }

    private StepDraft? Draft(Keys keys, StageDraft stage, StepKind kind, string subject)
    {
        if (NameOf(keys, kind, subject) is not { } name)
        {
            return null;
        }

        if (!stage.Names.Add(name))
        {
            Place second = keys.PlaceOf(keys.Find("named") is null ? kind.Word : "named");
            log.Add(
                "PR-P02",
                second,
                $"this stage already has a step {Quoting.Of(name)}; tell them apart with 'named'"
            );
        }

        Characteristic? reading = null;
        string? readingKey =
            kind == StepKind.Measure || kind == StepKind.Cut ? kind.Word
            : kind == StepKind.Zero ? "from"
            : null;
        if (readingKey is not null && keys.Find(readingKey) is { } readingNode)
        {
            reading = ReadingOf(readingNode);
            if (reading is null)
            {
                return null;
            }
        }

        bool ofHead = kind == StepKind.Sign || (reading?.OfHead ?? false);
        (bool Head, IReadOnlyList<string> Kinds) where = For(keys, kind, reading, ofHead);
        return new StepDraft
        {
            Keys = keys,
            Stage = stage,
            Index = _steps++,
            Kind = kind,
            Subject = subject,
            Name = name,
            Reading = reading,
            OfHead = where.Head,
            Kinds = where.Kinds,
            Place = keys.Place,
            WorksOut = reading is null ? [] : values.Entries(keys.Find("works-out"), "worked-out values"),
        };
    }

    private void RefuseUseless(Node node, Keys keys, StepKind kind)
    {
        foreach (Node.MapEntry entry in ((Node.Map)node).Entries)
        {
            string key = entry.Key.Text;
            bool known = StepKind.AllKeys.Contains(key, StringComparer.Ordinal);
            bool isKind = StepKind.All.Any(one => one.Word == key);
            if (known && !isKind && !kind.Keys.Contains(key, StringComparer.Ordinal))
            {
                log.Add("PR-P05", entry.Key.Place, $"a '{kind.Word}' step has no use for '{key}'; take it out");
            }
            else if (
                kind == StepKind.Zero
                && keys.Find("from") is null
                && StepKind.TakingKeys.Contains(key, StringComparer.Ordinal)
            )
            {
                log.Add(
                    "PR-P05",
                    entry.Key.Place,
                    $"without 'from' a zero takes no reading, so '{key}' has no use; add 'from' or take it out"
                );
            }
        }
    }

    private string? SubjectOf(Keys keys, StepKind kind)
    {
        Node node = keys.Find(kind.Word)!;
        return kind == StepKind.Do || kind == StepKind.Sign ? values.Text(node) : values.Name(node);
    }

    private string? NameOf(Keys keys, StepKind kind, string subject)
    {
        if (keys.Find("named") is { } named)
        {
            return values.Name(named);
        }

        if (ValueReader.IsName(subject))
        {
            return subject;
        }

        if (kind == StepKind.Do)
        {
            log.Add(
                "PR-Y11",
                keys.PlaceOf("do"),
                $"{Quoting.Of(subject)} is too long for a name, or has signs that a name can't have; give the step a short one with 'named'"
            );
        }

        return kind == StepKind.Do ? null : subject;
    }

    private Characteristic? ReadingOf(Node node)
    {
        if (values.Name(node) is not { } name)
        {
            return null;
        }

        Characteristic? reading = readings.FirstOrDefault(one => one.Name == name);
        if (reading is null)
        {
            string hint = Quoting.Hint(name, [.. readings.Select(one => one.Name)]);
            log.Add("PR-P01", node.Place, $"no reading is called {Quoting.Of(name)}; {hint}");
        }

        return reading;
    }

    private (bool Head, IReadOnlyList<string> Kinds) For(Keys keys, StepKind kind, Characteristic? reading, bool ofHead)
    {
        if (keys.Find("for") is not { } node)
        {
            return (ofHead, []);
        }

        if (node is Node.Scalar { Text: "head" })
        {
            if (reading is { OfHead: false })
            {
                log.Add(
                    "PR-P05",
                    node.Place,
                    $"'{reading.Name}' is read at each position, so its step can't be for the head; take 'for' out"
                );
                return (false, []);
            }

            return (true, []);
        }

        if (node is Node.Scalar)
        {
            log.Add("PR-Y09", node.Place, "a list of kinds is wanted here, as [I, E], or the word head");
            return (ofHead, []);
        }

        if (ofHead && kind != StepKind.Sign)
        {
            log.Add(
                "PR-P05",
                node.Place,
                $"'{reading!.Name}' is read once for the head, so its step has no kinds; take 'for' out"
            );
            return (true, []);
        }

        return (ofHead, ReadKinds(node));
    }

    private List<string> ReadKinds(Node node)
    {
        List<string> kinds = [];
        foreach (Node item in values.List(node, "kinds"))
        {
            if (values.Text(item) is not { } kind)
            {
                continue;
            }

            if (!PositionsReader.IsKind(kind))
            {
                log.Add(
                    "PR-Y11",
                    item.Place,
                    $"{Quoting.Of(kind)} can't be a kind: write one to three capitals, as I, E or IA"
                );
            }
            else if (!kinds.Contains(kind, StringComparer.Ordinal))
            {
                kinds.Add(kind);
            }
        }

        return kinds;
    }
}
