using ProcRunner.Formulas;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Yaml.Trees;
using ProcRunner.Yaml.Values;

namespace ProcRunner.Yaml.Plans;

/// <summary>A draft to the step, once everything it can name is known.</summary>
internal sealed class StepReader(
    FormulaReader formulas,
    TakingReader takings,
    WayOnReader ways,
    DraftReader drafts,
    Things things,
    ValueReader values,
    ProblemLog log
)
{
    private const int MostDigits = 10;
    private const int UsualDigits = 3;

    private static readonly Dictionary<string, bool> Signers = new(StringComparer.Ordinal)
    {
        ["operator"] = false,
        ["lead"] = true,
    };

    private readonly HashSet<int> _usedZeros = [];

    public Step Read(StepDraft draft)
    {
        Keys keys = draft.Keys;
        StepWork work = ReadWork(draft);
        return new Step
        {
            Index = draft.Index,
            StageIndex = draft.Stage.Index,
            Name = draft.Name,
            FullName = draft.FullName,
            Subject = draft.Subject,
            Work = work,
            OfHead = draft.OfHead,
            Kinds = draft.Kinds,
            OnlyWhere = formulas.Read(keys.Find("only-where"), draft.OfHead, FormulaType.YesNo),
            Say = values.Text(keys.Find("say")) ?? "",
            Why = values.Text(keys.Find("why")) ?? draft.Reading?.Why ?? "",
            RestsOn = things.RestsOn(keys.Find("rests-on")),
            Moves = things.Moves(keys.Find("moves"), !draft.OfHead),
            Shows = ReadShows(draft),
            Cautions = drafts.Cautions(keys.Find("cautions")),
            WaysOn = ReadWays(draft, work),
            MayBeLeftOut = values.YesNo(keys.Find("may-be-left-out")) ?? false,
            IsWork = values.Name(keys.Find("is-work")),
            Source = draft.Place,
        };
    }

    /// <summary>Reports the zeros that no cut uses; call it after all steps.</summary>
    public void ReportUnusedZeros(IEnumerable<StepDraft> steps)
    {
        foreach (StepDraft zero in steps.Where(step => step.Kind == StepKind.Zero && !_usedZeros.Contains(step.Index)))
        {
            log.Add(
                "PR-P05",
                zero.Place,
                $"no cut of this stage uses the zero {Quoting.Of(zero.Name)}; take it out or put the cut after it"
            );
        }
    }

    private StepWork ReadWork(StepDraft draft)
    {
        Keys keys = draft.Keys;
        return draft.Kind.Word switch
        {
            "measure" => new StepWork.Measure(takings.Read(draft)),
            "zero" => new StepWork.Zero(draft.Reading is null ? null : takings.Read(draft)),
            "cut" => ReadCut(draft),
            "inspect" => new StepWork.Inspect(ReadFindings(keys)),
            "decide" => new StepWork.Decide(draft.Subject, ReadChoices(keys)),
            "fit" => new StepWork.Fit(draft.Subject),
            "sign" => ReadSign(draft),
            _ => new StepWork.Do(),
        };
    }

    private IReadOnlyList<WayOn> ReadWays(StepDraft draft, StepWork work)
    {
        bool canFail = work switch
        {
            StepWork.Measure measure => TakingReader.IsJudged(measure.Taking),
            StepWork.Cut => true,
            StepWork.Zero { From: { } from } => TakingReader.IsJudged(from),
            StepWork.Inspect inspect => inspect.Findings.Any(finding => !finding.Good),
            _ => false,
        };
        if (canFail)
        {
            return ways.Read(draft);
        }

        if (draft.Kind.Keys.Contains("ways-on", StringComparer.Ordinal) && draft.Keys.Find("ways-on") is { } useless)
        {
            log.Add(
                "PR-P05",
                useless.Place,
                "nothing here can be out of spec, so there is no way on to choose; take 'ways-on' out, or give a window"
            );
        }

        return [];
    }

    private StepWork.Cut ReadCut(StepDraft draft)
    {
        FormulaType distance = FormulaType.Quantity(draft.Reading!.Dimension.OfDifference());
        Keys keys = draft.Keys;
        if (keys.Find("stop-short") is null)
        {
            log.Add("PR-P05", keys.Place, "a cut needs 'stop-short': how far before the aim the first approach stops");
        }

        Taking taking = takings.Read(draft);
        if (taking.Window is Window.None)
        {
            log.Add("PR-P05", keys.PlaceOf("window"), "a cut needs a window to work to; take 'window: none' out");
        }

        return new StepWork.Cut(
            taking,
            ZeroOf(draft),
            formulas.Read(keys.Find("stop-short"), draft.OfHead, distance) ?? FormulaReader.Placeholder,
            formulas.Read(keys.Find("agree-within"), draft.OfHead, distance)
        );
    }

    private int ZeroOf(StepDraft cut)
    {
        StepDraft[] before =
        [
            .. cut.Stage.Steps.TakeWhile(step => step.Index < cut.Index).Where(step => step.Kind == StepKind.Zero),
        ];
        Node? node = cut.Keys.Find("zero");
        string? name = values.Name(node);
        StepDraft? zero = name is null ? before.LastOrDefault() : before.FirstOrDefault(step => step.Name == name);
        if (zero is null)
        {
            if (name is not null)
            {
                string hint = Quoting.Hint(name, [.. before.Select(step => step.Name)]);
                log.Add(
                    "PR-P01",
                    node!.Place,
                    $"no zero before this cut in its stage is called {Quoting.Of(name)}; {hint}"
                );
            }
            else if (node is null)
            {
                log.Add("PR-P05", cut.Place, "a cut needs a zero before it in its stage; add a step 'zero: NAME'");
            }

            return 0;
        }

        _usedZeros.Add(zero.Index);
        bool covers = zero.Kinds.Count == 0 || (cut.Kinds.Count > 0 && cut.Kinds.All(zero.Kinds.Contains));
        if ((cut.OfHead && !zero.OfHead) || !covers)
        {
            log.Add(
                "PR-P05",
                cut.Place,
                $"the zero {Quoting.Of(zero.Name)} isn't set everywhere that this cut is made; let both be for the same positions"
            );
        }

        return zero.Index;
    }

    private List<Finding> ReadFindings(Keys keys)
    {
        Dictionary<string, bool> words = new(StringComparer.Ordinal) { ["good"] = true, ["out"] = false };
        Node? node = keys.Require("findings");
        List<Finding> findings = [];
        foreach (Node.MapEntry entry in values.Entries(node, "findings"))
        {
            if (values.OneOf(entry.Value, words) is { } good)
            {
                findings.Add(new Finding(entry.Key.Text, good));
            }
        }

        if (node is Node.Map { Entries.Count: < 2 })
        {
            log.Add(
                "PR-P05",
                node.Place,
                "an inspection needs two findings at least, as in {none: good, cracked: out}"
            );
        }

        return findings;
    }

    private IReadOnlyList<string> ReadChoices(Keys keys)
    {
        Node? node = keys.Require("choices");
        if (node is Node.List { Items.Count: < 2 })
        {
            log.Add("PR-P05", node.Place, "a decision needs two choices at least, as in [keep, replace]");
        }

        return values.Names(node, "choices");
    }

    private StepWork.Sign ReadSign(StepDraft draft)
    {
        if (!SignMeanings.All.Contains(draft.Subject, StringComparer.Ordinal))
        {
            log.Add(
                "PR-Y09",
                draft.Keys.Find("sign")!.Place,
                $"{Quoting.Of(draft.Subject)} was read; a person signs {Quoting.AnyOf([.. SignMeanings.All])}"
            );
        }

        return new StepWork.Sign(draft.Subject, values.OneOf(draft.Keys.Find("signed-by"), Signers) ?? false);
    }

    private List<ShownNumber> ReadShows(StepDraft draft)
    {
        List<ShownNumber> shows = [];
        foreach (Node.MapEntry entry in values.Entries(draft.Keys.Find("shows"), "shown numbers"))
        {
            if (Keys.Of(entry.Value, "a shown number", ["is", "in", "digits"], log) is not { } keys)
            {
                continue;
            }

            Unit? unit = values.UnitOf(keys.Find("in"));
            FormulaType? wanted = unit is null ? null : FormulaType.Quantity(unit.Dimension);
            Formula? formula = formulas.Read(keys.Require("is"), draft.OfHead, wanted);
            int digits = values.Whole(keys.Find("digits"), 0, MostDigits) ?? UsualDigits;
            if (formula is not null)
            {
                shows.Add(new ShownNumber(entry.Key.Text, formula, unit, digits));
            }
        }

        return shows;
    }
}
