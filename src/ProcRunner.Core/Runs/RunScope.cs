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

    private Position? Here => _plan.PositionOf(position);

    /// <inheritdoc/>
    public FormulaValue? ValueOf(string name)
    {
        if (_plan.NameOf(name) is not { } read)
        {
            return null;
        }

        return AmountOf(read) is { } amount
            ? new FormulaValue.Amount(amount)
            : read.Name switch
            {
                FormulaName.ValueEach => Find(read, position) is { } value
                    ? new FormulaValue.Many([.. value.Each.Select(Exact.Of)])
                    : null,
                FormulaName.OverEach one => Each(read, one.OwnKindOnly),
                FormulaName.Feature one => _plan.Head.Features.TryGetValue(one.Name, out bool has)
                    ? new FormulaValue.Truth(has)
                    : null,
                FormulaName.Decided one => Word(state.ChoiceOf(one.Subject, position)),
                FormulaName.Found one => Word(state.FindingOf(one.Subject, position)),
                FormulaName.OwnKind => Word(Here?.Kind),
                _ => null,
            };
    }

    /// <inheritdoc/>
    public Exact? AmountOf(string name) => _plan.NameOf(name) is { } read ? AmountOf(read) : null;

    private Exact? AmountOf(PlanName read) =>
        read.IsFixed
            ? read.FixedAt(position)
            : read.Name switch
            {
                FormulaName.Value => Amount(Find(read, position)?.Value),
                FormulaName.ValueStatistic one => Find(read, position)?.Of(one.Statistic),
                FormulaName.ValuePlace one => Amount(Find(read, position)?.At(one.Place)),
                FormulaName.Over one => Over(read, one),
                FormulaName.AsFound => Amount(RecordOf(read, position)?.AsFound),
                FormulaName.SpecLimit one => LimitFinder.EndOf(
                    LimitFinder.Figures(state, one.Limit, position),
                    one.End
                ),
                FormulaName.PositionsDecided one => new Exact(
                    Rational.FromInteger(PositionsDecided(one)),
                    Dimension.None
                ),
                _ => null,
            };

    /// <inheritdoc/>
    public string? TextOf(string name) =>
        _plan.NameOf(name) switch
        {
            { Name: FormulaName.Value } read => (
                Taken(read, position)?.Value ?? RecordOf(read, position)?.Value
            )?.ToString(),
            { Name: FormulaName.ShopSetting one } => _plan
                .Procedure.Settings.GetValueOrDefault(one.Setting)
                ?.Value.ToString(),
            _ => null,
        };

    private Exact? Over(PlanName read, FormulaName.Over name)
    {
        List<Exact> values = [];
        for (int i = 0; i < _plan.Positions.Count; i++)
        {
            bool included = !name.OwnKindOnly || _plan.Positions[i].Kind == Here?.Kind;
            if (included && Find(read, i) is { } value)
            {
                values.Add(Exact.Of(value.Value));
            }
        }

        return values.Count > 0 || name.Summary == Statistic.Count ? Statistics.Of(name.Summary, values) : null;
    }

    private FormulaValue.Many? Each(PlanName read, bool ownKindOnly)
    {
        List<Exact> values = [];
        for (int i = 0; i < _plan.Positions.Count; i++)
        {
            if (ownKindOnly && _plan.Positions[i].Kind != Here?.Kind)
            {
                continue;
            }

            if (Find(read, i) is not { } value)
            {
                return null;
            }

            values.Add(Exact.Of(value.Value));
        }

        return values.Count > 0 ? new FormulaValue.Many(values) : null;
    }

    private KnownValue? Find(PlanName read, int at)
    {
        if (Taken(read, at) is { } now)
        {
            return now;
        }

        return RecordOf(read, at) is { } record && (staleToo || !record.Stale)
            ? new KnownValue(record.Value, record.Places)
            : null;
    }

    private KnownValue? Taken(PlanName read, int at) =>
        at == position && taken is not null && read.Characteristic >= 0
            ? taken.Find(_plan.CharacteristicAt(read.Characteristic).Name)
            : null;

    private ValueRecord? RecordOf(PlanName read, int at) =>
        read.Characteristic >= 0 ? state.Value(read.Characteristic, read.IsOfHead ? At.Head : at) : null;

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

    private static FormulaValue.Word? Word(string? text) => text is null ? null : new FormulaValue.Word(text);
}
