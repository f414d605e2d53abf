using ProcRunner.Procedures;
using ProcRunner.Runs;

namespace ProcRunner.Records.History;

/// <summary>The values of a run.</summary>
public static class RunValues
{
    /// <summary>Every value there is, in the procedure's order: those of the head under <see cref="At.Head"/>.</summary>
    public static IEnumerable<(Characteristic Characteristic, int Position, ValueRecord Value)> Of(RunState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        for (int i = 0; i < state.Plan.Procedure.Characteristics.Count; i++)
        {
            Characteristic characteristic = state.Plan.Procedure.Characteristics[i];
            int first = characteristic.OfHead ? At.Head : 0;
            int last = characteristic.OfHead ? At.Head : state.Plan.Positions.Count - 1;
            for (int position = first; position <= last; position++)
            {
                if (state.Value(i, position) is { } value)
                {
                    yield return (characteristic, position, value);
                }
            }
        }
    }
}
