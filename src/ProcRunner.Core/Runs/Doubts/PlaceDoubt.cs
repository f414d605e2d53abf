using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Shop;

namespace ProcRunner.Runs.Doubts;

/// <summary>
/// What is hard to believe about one of several places, asked while the gauge is still there: a turn of its dial off those
/// typed before it.
/// </summary>
public static class PlaceDoubt
{
    /// <summary>What is to be asked about the last place typed, or null: it is believed, or was typed twice.</summary>
    /// <param name="state">The run.</param>
    /// <param name="shop">The shop, for the gauge in use.</param>
    /// <param name="at">The step that takes the reading.</param>
    /// <param name="places">The places typed so far, in order; the last one is looked at.</param>
    /// <param name="first">What was typed at that place when it was asked about; null when it wasn't.</param>
    public static string? Of(RunState state, ShopState shop, At at, IReadOnlyList<Quantity> places, Quantity? first)
    {
        Deciding on = new(state, shop, default);
        if (
            on.StepOf(at).Taking is not { GaugeKind: { } kind } taking
            || GaugeChooser.IdOf(on, kind) is not { } id
            || !shop.Gauges.TryGetValue(id, out Gauge? gauge)
            || SoFar(on, at, taking, places, gauge) is not { Of.Doubts.OneTurn.On: true } seen
            || TurnDoubt.OfLastPlace(seen) is not { } doubt
        )
        {
            return null;
        }

        bool agrees = first is { } before && Seen.Apart(Seen.Base(before), Seen.Base(places[^1])) <= doubt.Within;
        return agrees ? null : $"{doubt.Why} {ReadingDoubts.Again}";
    }

    // What is known of a reading before it is whole.
    private static Seen SoFar(Deciding on, At at, Taking taking, IReadOnlyList<Quantity> places, Gauge gauge) =>
        new()
        {
            On = on,
            At = at,
            Of = on.Plan.CharacteristicAt(on.Plan.CharacteristicIndex(taking.Characteristic)),
            Limits = Limits.None,
            Gauge = gauge,
            Predicted = null,
            Reading = new TakenReading
            {
                Characteristic = taking.Characteristic,
                Typed = "",
                Places = [.. places.Select((value, i) => new PlaceValue(taking.Places[i], value))],
                Value = places[^1],
                Gauge = gauge.Id,
                Judgement = Judgement.None,
                Worked = [],
            },
        };
}
