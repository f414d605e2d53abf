using ProcRunner.Formulas;
using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>
/// The names of <c>ProcedureNames</c> with their values in a run, seen from one position. A stale value isn't
/// known, except to conditions, which ask what the head was like when the choice was made.
/// </summary>
internal sealed class RunScope(RunState state, int position, bool staleToo) : IFormulaScope
{
    private readonly Plan _plan = state.Plan;

    /// <inheritdoc/>
    public FormulaValue? ValueOf(string name)
    {
        string[] parts = name.Split('.');
        return parts[0] switch
        {
            "kind" when parts.Length == 1 => Here is { } at ? new FormulaValue.Word(at.Kind) : null,
            "cylinder" when parts.Length == 1 => Here is { } at ? Number(at.Cylinder) : null,
            "guide angle" when parts.Length == 1 => Here is { } at
                ? Amount(new Quantity(at.GuideAngle, Units.Degree))
                : null,
            "spec" => OfSpec(parts),
            "setting" => _plan.Procedure.Settings.TryGetValue(parts[1], out Setting? setting)
                ? Amount(setting.Value)
                : null,
            "feature" => _plan.Head.Features.TryGetValue(parts[1], out bool has) ? new FormulaValue.Truth(has) : null,
            "decided" => Word(state.ChoiceOf(parts[1], position)),
            "found" => Word(state.FindingOf(parts[1], position)),
            "positions" => Number(
                Enumerable.Range(0, _plan.Positions.Count).Count(p => state.ChoiceOf(parts[1], p) == parts[2])
            ),
            "all" => Over(parts, static (_, _) => true),
            "kind" => Over(parts, (p, here) => p.Kind == here?.Kind),
            "as found" => RecordOf(parts[1])?.AsFound is { } found ? Amount(found) : null,
            _ => OfReading(parts),
        };
    }

    /// <inheritdoc/>
    public string? TextOf(string name)
    {
        string[] parts = name.Split('.');
        return parts.Length == 1 && RecordOf(name) is { } record ? record.Value.ToString()
            : parts is ["setting", var setting] ? _plan.Procedure.Settings.GetValueOrDefault(setting)?.Value.ToString()
            : null;
    }

    private Position? Here => _plan.PositionOf(position);

    private FormulaValue.Amount? OfSpec(string[] parts)
    {
        if (parts.Length == 2)
        {
            return _plan.Head.FigureOf(parts[1], Here) is { } figure ? Amount(figure.Value) : null;
        }

        (Quantity? Low, Quantity? Aim, Quantity? High) limit = LimitFinder.Figures(state, parts[1], position);
        Quantity? end = parts[2] switch
        {
            "low" => limit.Low,
            "high" => limit.High,
            _ => limit.Aim,
        };
        return end is { } value ? Amount(value)
            : parts[2] == "aim" && limit is { Low: { } low, High: { } high } ? Middle(low, high)
            : null;
    }

    private FormulaValue? OfReading(string[] parts)
    {
        if (RecordOf(parts[0]) is not { } record || (record.Stale && !staleToo))
        {
            return null;
        }

        return parts.Length == 1
            ? Amount(record.Value)
            : OfPlaces(record.Places.Count > 0 ? record.Places : [new PlaceValue("", record.Value)], parts[1]);
    }

    /// <summary>A statistic over the places of a reading, or the value at one of them; null when there is no such place.</summary>
    internal static FormulaValue? OfPlaces(IReadOnlyList<PlaceValue> places, string asked)
    {
        if (StatisticWords.Find(asked) is { } statistic)
        {
            return new FormulaValue.Amount(Statistics.Of(statistic, [.. places.Select(p => Exact.Of(p.Value))]));
        }

        foreach (PlaceValue place in places)
        {
            if (place.Place == asked)
            {
                return Amount(place.Value);
            }
        }

        return null;
    }

    private FormulaValue.Amount? Over(string[] parts, Func<Position, Position?, bool> included)
    {
        List<Exact> values = [];
        for (int i = 0; i < _plan.Positions.Count; i++)
        {
            if (
                included(_plan.Positions[i], Here)
                && state.Value(parts[1], i) is { } record
                && (!record.Stale || staleToo)
            )
            {
                values.Add(Exact.Of(record.Value));
            }
        }

        return parts[2] == "count" ? Number(values.Count)
            : values.Count == 0 ? null
            : parts[2] == "median" ? new FormulaValue.Amount(Statistics.Median(values))
            : StatisticWords.Find(parts[2]) is { } statistic ? new FormulaValue.Amount(Statistics.Of(statistic, values))
            : null;
    }

    private ValueRecord? RecordOf(string characteristic) =>
        _plan.TryCharacteristic(characteristic, out int index)
            ? state.Value(index, _plan.Procedure.Characteristics[index].OfHead ? At.Head : position)
            : null;

    private static FormulaValue.Amount Middle(Quantity low, Quantity high) =>
        new(Statistics.Of(Statistic.Mean, [Exact.Of(low), Exact.Of(high)]));

    private static FormulaValue.Amount Amount(Quantity quantity) => new(Exact.Of(quantity));

    private static FormulaValue.Amount Number(int value) => new(new Exact(Rational.FromInteger(value), Dimension.None));

    private static FormulaValue.Word? Word(string? text) => text is null ? null : new FormulaValue.Word(text);
}
