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
            LimitOf(characteristic.Name, position, value.ByStep)?.Note ?? "",
            _moved.Since(index, value.Sequence),
            FromTheNewFace(index, position, value)
        );
    }

    // A limit of the head spec holds for the head as it goes out; one that was worked out held for what it was worked out from.
    private string FromTheNewFace(int index, int position, ValueRecord value)
    {
        if (_moved.Now(index, value.Value, value.Sequence) is not { } after)
        {
            return "";
        }

        string name = tell.Plan.Procedure.Characteristics[index].Name;
        bool isUnder = LimitOf(name, position, value.ByStep)?.Low is { } low && after.Now.CompareTo(low) < 0;
        return isUnder ? $"{after.Working}, {FinalValue.UnderItsLow}" : after.Working;
    }

    // The head spec's limit that a value was held to, if it was one.
    private Limit? LimitOf(string name, int position, int step)
    {
        Taking? taking = tell.Plan.Steps[step].Taking;
        Window? window =
            taking?.Characteristic == name
                ? taking.Window
                : taking?.WorksOut.FirstOrDefault(w => w.Name == name)?.Window;
        return window is Window.FromSpec spec
            ? tell.Plan.Head.LimitOf(spec.LimitName, tell.Plan.PositionOf(position))
            : null;
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
