using System.Collections.Concurrent;
using ProcRunner.Formulas;
using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>
/// The names of <c>ProcedureNames</c> with their values in a run, seen from one position. A stale value isn't
/// known, except to conditions, which ask what the head was like when the choice was made.
/// </summary>
/// <param name="state">The run.</param>
/// <param name="position">The position, or <see cref="At.Head"/>.</param>
/// <param name="staleToo">True for conditions.</param>
/// <param name="taken">A reading at this position that isn't part of the run yet and comes before what is; or null.</param>
internal sealed class RunScope(RunState state, int position, bool staleToo, JustTaken? taken = null) : IFormulaScope
{
    private readonly Plan _plan = state.Plan;

    // Names stand in formulas, of which there are as many as files hold.
    private static readonly ConcurrentDictionary<string, FormulaName?> Names = new(StringComparer.Ordinal);

    private static FormulaName? NameOf(string name) => Names.GetOrAdd(name, static text => FormulaName.Parse(text));

    private Position? Here => _plan.PositionOf(position);

    /// <inheritdoc/>
    public FormulaValue? ValueOf(string name) =>
        NameOf(name) switch
        {
            null => null,
            { } read when AmountOf(read) is { } amount => new FormulaValue.Amount(amount),
            FormulaName.ValueEach one => Find(one.Characteristic, position) is { } value
                ? new FormulaValue.Many([.. value.Each.Select(Exact.Of)])
                : null,
            FormulaName.OverEach one => Each(one),
            FormulaName.Feature one => _plan.Head.Features.TryGetValue(one.Name, out bool has)
                ? new FormulaValue.Truth(has)
                : null,
            FormulaName.Decided one => Word(state.ChoiceOf(one.Subject, position)),
            FormulaName.Found one => Word(state.FindingOf(one.Subject, position)),
            FormulaName.OwnKind => Word(Here?.Kind),
            _ => null,
        };

    /// <inheritdoc/>
    public Exact? AmountOf(string name) => NameOf(name) is { } read ? AmountOf(read) : null;

    private Exact? AmountOf(FormulaName name) =>
        name switch
        {
            FormulaName.Value one => Amount(Find(one.Characteristic, position)?.Value),
            FormulaName.ValueStatistic one => Find(one.Characteristic, position)?.Of(one.Statistic),
            FormulaName.ValuePlace one => Amount(Find(one.Characteristic, position)?.At(one.Place)),
            FormulaName.Over one => Over(one),
            FormulaName.AsFound one => Amount(RecordOf(one.Characteristic, position)?.AsFound),
            FormulaName.SpecFigure one => Amount(_plan.Head.FigureOf(one.Figure, Here)?.Value),
            FormulaName.SpecLimit one => OfLimit(one),
            FormulaName.ShopSetting one => Amount(_plan.Procedure.Settings.GetValueOrDefault(one.Setting)?.Value),
            FormulaName.PositionsDecided one => Number(PositionsDecided(one)),
            FormulaName.OwnCylinder => Here is { } at ? Number(at.Cylinder) : null,
            FormulaName.OwnGuideAngle => Here is { } at ? Amount(new Quantity(at.GuideAngle, Units.Degree)) : null,
            _ => null,
        };

    /// <inheritdoc/>
    public string? TextOf(string name) =>
        NameOf(name) switch
        {
            FormulaName.Value one => (
                taken?.Find(one.Characteristic)?.Value ?? RecordOf(one.Characteristic, position)?.Value
            )?.ToString(),
            FormulaName.ShopSetting one => _plan.Procedure.Settings.GetValueOrDefault(one.Setting)?.Value.ToString(),
            _ => null,
        };

    private Exact? OfLimit(FormulaName.SpecLimit name)
    {
        (Quantity? low, Quantity? aim, Quantity? high) = LimitFinder.Figures(state, name.Limit, position);
        return name.End switch
        {
            LimitEnd.Low => Amount(low),
            LimitEnd.High => Amount(high),
            _ when aim is null && low is { } l && high is { } h => Statistics.Middle(Exact.Of(l), Exact.Of(h)),
            _ => Amount(aim),
        };
    }

    private Exact? Over(FormulaName.Over name)
    {
        List<Exact> values = [];
        for (int i = 0; i < _plan.Positions.Count; i++)
        {
            bool included = !name.OwnKindOnly || _plan.Positions[i].Kind == Here?.Kind;
            if (included && Find(name.Characteristic, i) is { } value)
            {
                values.Add(Exact.Of(value.Value));
            }
        }

        return values.Count > 0 || name.Summary == Statistic.Count ? Statistics.Of(name.Summary, values) : null;
    }

    private FormulaValue.Many? Each(FormulaName.OverEach name)
    {
        List<Exact> values = [];
        for (int i = 0; i < _plan.Positions.Count; i++)
        {
            if (name.OwnKindOnly && _plan.Positions[i].Kind != Here?.Kind)
            {
                continue;
            }

            if (Find(name.Characteristic, i) is not { } value)
            {
                return null;
            }

            values.Add(Exact.Of(value.Value));
        }

        return values.Count > 0 ? new FormulaValue.Many(values) : null;
    }

    private KnownValue? Find(string characteristic, int at)
    {
        if (at == position && taken?.Find(characteristic) is { } now)
        {
            return now;
        }

        return RecordOf(characteristic, at) is { } record && (staleToo || !record.Stale)
            ? new KnownValue(record.Value, record.Places)
            : null;
    }

    private ValueRecord? RecordOf(string characteristic, int at) =>
        _plan.TryCharacteristic(characteristic, out int index)
            ? state.Value(index, _plan.CharacteristicAt(index).OfHead ? At.Head : at)
            : null;

    private int PositionsDecided(FormulaName.PositionsDecided name)
    {
        int count = 0;
        for (int i = 0; i < _plan.Positions.Count; i++)
        {
            count += state.ChoiceOf(name.Subject, i) == name.Choice ? 1 : 0;
        }

        return count;
    }

    private static Exact? Amount(Quantity? quantity) => quantity is { } value ? Exact.Of(value) : null;

    private static Exact Number(int value) => new(Rational.FromInteger(value), Dimension.None);

    private static FormulaValue.Word? Word(string? text) => text is null ? null : new FormulaValue.Word(text);
}
