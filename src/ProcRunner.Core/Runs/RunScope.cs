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
        return FormulaName.Parse(name) switch
        {
            FormulaName.OwnKind => Here is { } at ? new FormulaValue.Word(at.Kind) : null,
            FormulaName.OwnCylinder => Here is { } at ? Number(at.Cylinder) : null,
            FormulaName.OwnGuideAngle => Here is { } at ? Amount(new Quantity(at.GuideAngle, Units.Degree)) : null,
            FormulaName.SpecFigure asked => _plan.Head.FigureOf(asked.Figure, Here) is { } figure
                ? Amount(figure.Value)
                : null,
            FormulaName.SpecLimit asked => OfLimit(asked),
            FormulaName.ShopSetting asked => SettingOf(asked) is { } setting ? Amount(setting.Value) : null,
            FormulaName.Feature asked => _plan.Head.Features.TryGetValue(asked.Name, out bool has)
                ? new FormulaValue.Truth(has)
                : null,
            FormulaName.Decided asked => Word(state.ChoiceOf(asked.Subject, position)),
            FormulaName.Found asked => Word(state.FindingOf(asked.Subject, position)),
            FormulaName.PositionsDecided asked => Number(
                Enumerable.Range(0, _plan.Positions.Count).Count(p => state.ChoiceOf(asked.Subject, p) == asked.Choice)
            ),
            FormulaName.Over asked => Over(asked),
            FormulaName.AsFound asked => RecordOf(asked.Characteristic)?.AsFound is { } found ? Amount(found) : null,
            FormulaName.Value asked => Known(asked.Characteristic) is { } record ? Amount(record.Value) : null,
            FormulaName.ValueStatistic asked => OfPlaces(asked.Characteristic, asked),
            FormulaName.ValuePlace asked => OfPlaces(asked.Characteristic, asked),
            _ => null,
        };
    }

    /// <inheritdoc/>
    public string? TextOf(string name) =>
        FormulaName.Parse(name) switch
        {
            FormulaName.Value asked => RecordOf(asked.Characteristic)?.Value.ToString(),
            FormulaName.ShopSetting asked => SettingOf(asked)?.Value.ToString(),
            _ => null,
        };

    private Position? Here => _plan.PositionOf(position);

    private Setting? SettingOf(FormulaName.ShopSetting asked) =>
        _plan.Procedure.Settings.GetValueOrDefault(asked.Setting);

    private FormulaValue.Amount? OfLimit(FormulaName.SpecLimit asked)
    {
        (Quantity? Low, Quantity? Aim, Quantity? High) limit = LimitFinder.Figures(state, asked.Limit, position);
        Quantity? end = asked.End switch
        {
            LimitEnd.Low => limit.Low,
            LimitEnd.High => limit.High,
            _ => limit.Aim,
        };
        return end is { } value ? Amount(value)
            : asked.End == LimitEnd.Aim && limit is { Low: { } low, High: { } high } ? Middle(low, high)
            : null;
    }

    private ValueRecord? Known(string characteristic) =>
        RecordOf(characteristic) is { } record && (staleToo || !record.Stale) ? record : null;

    private FormulaValue.Amount? OfPlaces(string characteristic, FormulaName asked) =>
        Known(characteristic) is { } record ? OfPlaces(record.Places, record.Value, asked) : null;

    /// <summary>
    /// A statistic over the places of a reading, or the value at one of them; null when there is no such place. Without
    /// places the value stands for all.
    /// </summary>
    internal static FormulaValue.Amount? OfPlaces(IReadOnlyList<PlaceValue> places, Quantity value, FormulaName? asked)
    {
        if (asked is FormulaName.ValueStatistic { Statistic: var statistic })
        {
            List<Exact> values = places.Count > 0 ? [.. places.Select(p => Exact.Of(p.Value))] : [Exact.Of(value)];
            return new(Statistics.Of(statistic, values));
        }

        foreach (PlaceValue place in places)
        {
            if (place.Place == (asked as FormulaName.ValuePlace)?.Place)
            {
                return Amount(place.Value);
            }
        }

        return null;
    }

    private FormulaValue.Amount? Over(FormulaName.Over asked)
    {
        List<Exact> values = [];
        for (int i = 0; i < _plan.Positions.Count; i++)
        {
            if (
                (!asked.OwnKindOnly || _plan.Positions[i].Kind == Here?.Kind)
                && state.Value(asked.Characteristic, i) is { } record
                && (!record.Stale || staleToo)
            )
            {
                values.Add(Exact.Of(record.Value));
            }
        }

        return values.Count > 0 || asked.Summary == Statistic.Count ? new(Statistics.Of(asked.Summary, values)) : null;
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
