using ProcRunner.Procedures;
using ProcRunner.Records.Story;
using ProcRunner.Runs;

namespace ProcRunner.Records;

/// <summary>What whoever builds the engine must close or know: the procedure's own words, then what this job adds.</summary>
internal sealed class AdviceBook(
    Plan plan,
    Outlook outlook,
    IReadOnlyList<FinalValue> values,
    IReadOnlyList<Case> cases
)
{
    private const string Common = "common practice";

    /// <summary>All of it.</summary>
    public IEnumerable<Advice> All() => [.. OfConcessions(), .. FromProcedure(), .. OfTheDeck(), .. OfValves()];

    private IEnumerable<Advice> FromProcedure() =>
        plan
            .Steps.Where(s => plan.Procedure.ForTheBuilder.Contains(s.Name) && s.Say.Length > 0)
            .Where(s => outlook.AskedAt(new At(s.Index, At.Head)) == Asked.Yes)
            .Select(s => new Advice($"Still to be done: {s.Say}.", $"procedure {plan.Procedure.Name}, {s.Name}"));

    private IEnumerable<Advice> OfTheDeck()
    {
        if (ValueOf(RecordRoles.SkimTaken) is { } skim && skim.Record.Value.Value > 0)
        {
            string before = ValueOf(RecordRoles.LostBefore) is { } lost ? $", {lost.Record.Value} before" : "";
            yield return new Advice(
                $"The deck was lowered by {skim.Record.Value} now{before}: the head stands nearer to the block by that much. How deep the valves lie below the new deck stands below. Choose the gasket's thickness for it.",
                Common
            );
        }

        if (ValueOf(RecordRoles.BlockLost) is { } block)
        {
            yield return new Advice(
                $"The block was taken as cut by {block.Record.Value}. If that isn't measured, measure the block's deck height before the gasket is chosen.",
                Common
            );
        }
    }

    private IEnumerable<Advice> OfValves()
    {
        string? depth = plan.Procedure.ValueShownAs(RecordRoles.Recession);
        FinalValue[] depths =
        [
            .. values
                .Where(v => v.Name == depth && v.Standing is (ValueStanding.In or ValueStanding.Conceded))
                .OrderBy(v => v.Record.Value),
        ];
        if (depths.Length > 1)
        {
            yield return new Advice(
                $"Shallowest valve: {depths[0].Position}, {depths[0].Record.Value} below the deck. Deepest: {depths[^1].Position}, {depths[^1].Record.Value}. Measure valve-to-piston clearance on every cylinder all the same.",
                Common
            );
        }
    }

    private IEnumerable<Advice> OfConcessions() =>
        cases
            .Where(c => c is { End: CaseEnd.Conceded, IsCurrent: true })
            .Select(c => new Advice(
                $"Used out of spec: {c.About}: {c.Fault}. Decide whether it may be used so in this engine.",
                "this job"
            ));

    private FinalValue? ValueOf(string role) =>
        plan.Procedure.ValueShownAs(role) is { } name
            ? values.FirstOrDefault(v => v.Name == name && v.Position == "head")
            : null;
}
