using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs;

namespace ProcRunner.Records;

/// <summary>
/// What moved after a value was taken, of that which it was measured from and which nobody measures it from again: the depth of a
/// counterbore from a deck that was cut later, when the insert stood in it.
/// </summary>
internal sealed class MovedSince(RunState state)
{
    private readonly Plan _plan = state.Plan;

    /// <summary>The work that moved it, with how much where that was measured; empty when nothing did.</summary>
    /// <param name="characteristic">The value's characteristic.</param>
    /// <param name="sequence">The entry it was taken in.</param>
    public string Since(int characteristic, long sequence) =>
        string.Join(", ", Movers(characteristic, sequence).Select(InWords));

    /// <summary>
    /// What a depth comes to from the face as it is now, with its working: less by what was cut off the face. A part that would
    /// have stood out of the face was cut level with it, so never below 0. Null where nothing was cut, or not by how much.
    /// </summary>
    /// <param name="characteristic">The value's characteristic.</param>
    /// <param name="value">The value, from the face as it was.</param>
    /// <param name="sequence">The entry it was taken in.</param>
    public (Quantity Now, string Working)? Now(int characteristic, Quantity value, long sequence)
    {
        Quantity?[] cuts = [.. Movers(characteristic, sequence).Select(CutBy)];
        if (cuts.Length == 0 || Array.Exists(cuts, c => c is not { } cut || !ReferenceEquals(cut.Unit, value.Unit)))
        {
            return null;
        }

        Quantity now = new(value.Value - cuts.Sum(c => c!.Value.Value), value.Unit);
        string working = $"{value.ToDisplay()}{string.Concat(cuts.Select(c => $" - {c!.Value.ToDisplay()}"))}";
        return now.Value < 0
            ? (new Quantity(0, value.Unit), $"{working}, so cut level with it")
            : (now, $"{working} = {now.ToDisplay()}");
    }

    private IEnumerable<Step> Movers(int characteristic, long sequence)
    {
        HashSet<string> from = new(StringComparer.Ordinal);
        Collect(_plan.Procedure.Characteristics[characteristic].Name, from, []);
        return _plan.Steps.Where(s => s.Moves.Any(m => from.Contains(m.Of)) && WasDone(s, sequence));
    }

    private Quantity? CutBy(Step step) =>
        step.Work is StepWork.Cut { Taking: var taking }
            ? state.Value(_plan.CharacteristicIndex(taking.Characteristic), At.Head)?.Value
            : null;

    private bool WasDone(Step step, long since) =>
        _plan
            .PositionsOf(step)
            .Select(p => state.Find(new At(step.Index, p)))
            .Any(r => r is { Standing: not StepStanding.Waiting } && r.Sequence > since);

    private string InWords(Step step) =>
        step.Taking is { } taking && state.Value(_plan.CharacteristicIndex(taking.Characteristic), At.Head) is { } value
            ? $"{taking.Characteristic} {value.Value.ToDisplay()}"
            : step.Name;

    // A value that is worked out is measured from whatever those are that it is worked out from.
    private void Collect(string name, HashSet<string> from, HashSet<string> seen)
    {
        if (!seen.Add(name) || !_plan.TryCharacteristic(name, out int index))
        {
            return;
        }

        from.UnionWith(_plan.Procedure.Characteristics[index].MeasuredFrom);
        IEnumerable<WorkOut> works = _plan.Steps.SelectMany(s => s.Taking?.WorksOut ?? []).Where(w => w.Name == name);
        foreach (string read in works.SelectMany(w => w.Formula.Names))
        {
            switch (FormulaName.Parse(read))
            {
                case FormulaName.Value of:
                    Collect(of.Characteristic, from, seen);
                    break;
                case FormulaName.ValueStatistic of:
                    Collect(of.Characteristic, from, seen);
                    break;
                case FormulaName.ValuePlace of:
                    Collect(of.Characteristic, from, seen);
                    break;
                default:
                    break;
            }
        }
    }
}
