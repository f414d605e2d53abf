using ProcRunner.Formulas;
using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>How much what is worked out in a run hangs on one of its readings.</summary>
public static class Sensitivity
{
    /// <summary>
    /// By how much a formula's amount grows for one more of a reading, both in base units: the sensitivity coefficient of
    /// JCGM 100:2008, 5.1.3, taken as a difference over a thousandth of the reading's unit. Null when it can't be worked out.
    /// </summary>
    /// <param name="state">The run, with a value of the reading.</param>
    /// <param name="formula">The formula.</param>
    /// <param name="position">Seen from which position.</param>
    /// <param name="characteristic">Index of the reading's characteristic, one of the position.</param>
    public static double? Of(RunState state, Formula formula, int position, int characteristic)
    {
        if (state.Value(characteristic, position) is not { } value)
        {
            return null;
        }

        TakenReading moved = new()
        {
            Characteristic = state.Plan.CharacteristicAt(characteristic).Name,
            Typed = "",
            Places = [.. value.Places.Select(p => p with { Value = Moved(p.Value, value.Value.Unit) })],
            Value = Moved(value.Value, value.Value.Unit),
            Gauge = "",
            Judgement = Judgement.None,
            Worked = [],
        };
        RunScope now = new(state, position, staleToo: true);
        RunScope then = new(state, position, staleToo: true, new JustTaken(moved, []));
        return formula.TryAmount(now, out Exact from) && formula.TryAmount(then, out Exact to)
            ? (to.Value - from.Value).ToDouble() / (value.Value.Unit.Factor.ToDouble() / 1000)
            : null;
    }

    // Places typed in several units move alike, by a thousandth of the one unit.
    private static Quantity Moved(Quantity quantity, Unit unit)
    {
        decimal step =
            quantity.Unit == unit
                ? 0.001m
                : (unit.Factor / quantity.Unit.Factor / Rational.FromInteger(1000)).Round(18, Rounding.Nearest);
        return new Quantity(quantity.Value + step, quantity.Unit);
    }
}
