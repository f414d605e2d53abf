using System.Collections.Frozen;
using ProcRunner.Formulas;
using ProcRunner.Problems;

namespace ProcRunner.Procedures.Checks;

/// <summary>Holds that every value a formula can't do without is taken by a step before it.</summary>
internal sealed class OrderCheck(Procedure procedure, SourcePlaces places, IReadOnlySet<string> broken)
{
    private readonly ILookup<string, Step> _givers = procedure
        .Steps.SelectMany(step => step.Gives.Select(name => (Name: name, Step: step)))
        .ToLookup(one => one.Name, one => one.Step, StringComparer.Ordinal);

    private readonly ILookup<string, Step> _decisions = procedure
        .Steps.Where(step => step.Work is StepWork.Decide)
        .ToLookup(step => step.Subject, StringComparer.Ordinal);

    private readonly ILookup<string, Step> _inspections = procedure
        .Steps.Where(step => step.Work is StepWork.Inspect)
        .ToLookup(step => step.Subject, StringComparer.Ordinal);

    public IEnumerable<Problem> Run() => procedure.Steps.SelectMany(Run);

    private IEnumerable<Problem> Run(Step step)
    {
        IEnumerable<(Formula Formula, IReadOnlySet<string> Given)> all = StepFormulas
            .Before(step)
            .Select(formula => (Formula: formula, Given: (IReadOnlySet<string>)FrozenSet<string>.Empty))
            .Concat(StepFormulas.After(step));
        foreach ((Formula formula, IReadOnlySet<string> given) in all)
        {
            foreach (string name in FormulaNames.Needed(formula))
            {
                if (Missing(FormulaName.Parse(name), step, given) is { } why)
                {
                    yield return new Problem(
                        "PR-P07",
                        places.Of(formula, step.Source),
                        $"[{name}] is read here, but {why}"
                    );
                }
            }
        }
    }

    private string? Missing(FormulaName? name, Step reader, IReadOnlySet<string> given) =>
        name switch
        {
            FormulaName.Value one => MissingValue(one.Characteristic, reader, given),
            FormulaName.ValueStatistic one => MissingValue(one.Characteristic, reader, given),
            FormulaName.ValuePlace one => MissingValue(one.Characteristic, reader, given),
            FormulaName.ValueEach one => MissingValue(one.Characteristic, reader, given),
            FormulaName.OverEach one => MissingOver(one.Characteristic, reader, given),
            FormulaName.Over one => MissingOver(one.Characteristic, reader, given),
            FormulaName.AsFound one => MissingAsFound(one.Characteristic, reader, given),
            FormulaName.Decided one => MissingDecision(one.Subject, reader),
            FormulaName.PositionsDecided one => MissingDecision(one.Subject, reader),
            FormulaName.Found one => _inspections[one.Subject].Any(step => step.Index < reader.Index)
                ? null
                : $"no step before inspects '{one.Subject}'; move this step or the inspection",
            _ => null,
        };

    private string? MissingValue(string name, Step reader, IReadOnlySet<string> given) =>
        broken.Contains(name) || given.Contains(name) || Givers(name, reader).Any()
            ? null
            : $"no step before takes '{name}'; move this step or that one, or write else([{name}], ...) if it may be missing";

    // The positions of this very step are done one after the other, so its own value counts too.
    private string? MissingOver(string name, Step reader, IReadOnlySet<string> given) =>
        broken.Contains(name) || given.Contains(name) || _givers[name].Any(step => step.Index < reader.Index)
            ? null
            : $"no step before takes '{name}'; move this step or that one";

    private string? MissingAsFound(string name, Step reader, IReadOnlySet<string> given)
    {
        bool IsAsFound(Step step) => procedure.Stages[step.StageIndex].AsFound;
        return
            broken.Contains(name) || (IsAsFound(reader) && given.Contains(name)) || Givers(name, reader).Any(IsAsFound)
            ? null
            : $"no stage before with 'as-found: yes' takes '{name}'; take it there";
    }

    private string? MissingDecision(string subject, Step reader) =>
        _decisions[subject].Any(step => step.Index < reader.Index)
            ? null
            : $"no step before decides about '{subject}'; move this step or the decision";

    /// <summary>Earlier steps that take the value where the reader can see it: of the head, or at a position of one of its kinds.</summary>
    private IEnumerable<Step> Givers(string name, Step reader) =>
        _givers[name].Where(step => step.Index < reader.Index && Meets(step, reader));

    private static bool Meets(Step giver, Step reader) =>
        giver.OfHead || giver.Kinds.Count == 0 || reader.Kinds.Count == 0 || giver.Kinds.Intersect(reader.Kinds).Any();
}
