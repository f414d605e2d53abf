using ProcRunner.Procedures;
using ProcRunner.Records.History;
using ProcRunner.Runs;

namespace ProcRunner.Records;

/// <summary>The values of a job as they stand.</summary>
internal sealed class ValueBook(RunState state, Outlook outlook, Telling tell)
{
    private readonly MovedSince _moved = new(state);

    /// <summary>Those of the head, then position by position, in the procedure's order.</summary>
    public IReadOnlyList<FinalValue> All()
    {
        return
        [
            .. RunValues
                .Of(state)
                .OrderBy(v => v.Position)
                .Select(v => Final(tell.Plan.CharacteristicIndex(v.Characteristic.Name), v.Position, v.Value)),
        ];
    }

    private FinalValue Final(int index, int position, ValueRecord value)
    {
        Characteristic characteristic = tell.Plan.Procedure.Characteristics[index];
        StepRecord? record = state.Find(new At(value.ByStep, position));
        TakenReading? reading = record?.Readings.LastOrDefault(r => r.Characteristic == characteristic.Name);
        string working =
            record
                ?.Readings.SelectMany(r => r.Worked)
                .LastOrDefault(w => w.Name == characteristic.Name && w.Value == value.Value)
                ?.Working
            ?? "";
        return new FinalValue(
            characteristic.Name,
            tell.Plan.PositionName(position),
            value,
            tell.Plan.Steps[value.ByStep].FullName,
            reading?.Gauge ?? "",
            WorkedOut: reading is null,
            working,
            FoundPlaces(characteristic.Name, position, value),
            Standing(index, position, value, record),
            tell.Stamp(value.Sequence),
            NoteOf(characteristic.Name, position, value.ByStep),
            _moved.Since(index, value.Sequence)
        );
    }

    // As "Ra, for a composition gasket": what a figure means can hang on it.
    private string NoteOf(string name, int position, int step)
    {
        Taking? taking = tell.Plan.Steps[step].Taking;
        Window? window =
            taking?.Characteristic == name
                ? taking.Window
                : taking?.WorksOut.FirstOrDefault(w => w.Name == name)?.Window;
        return window is Window.FromSpec spec
            ? tell.Plan.Head.LimitOf(spec.LimitName, tell.Plan.PositionOf(position))?.Note ?? ""
            : "";
    }

    private IReadOnlyList<PlaceValue> FoundPlaces(string name, int position, ValueRecord value) =>
        value.AsFoundBy < 0
            ? []
            : state
                .Find(new At(value.AsFoundBy, position))
                ?.Readings.LastOrDefault(r => r.Characteristic == name && r.Value == value.AsFound)
                ?.Places
                ?? [];

    private ValueStanding Standing(int index, int position, ValueRecord value, StepRecord? record)
    {
        if (value.Stale)
        {
            return outlook.WhoTakesAgain(index, position) is null ? ValueStanding.AsFound : ValueStanding.Recheck;
        }

        return value.Judgement.Verdict switch
        {
            Verdict.Out => record is { Conceded: true } ? ValueStanding.Conceded : ValueStanding.Out,
            Verdict.In => ValueStanding.In,
            Verdict.Short => ValueStanding.Short,
            _ => ValueStanding.Recorded,
        };
    }
}
