using System.Globalization;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Shop;

namespace ProcRunner.Runs;

/// <summary>Which gauge a reading is taken with, and whether it can tell.</summary>
internal static class GaugeChooser
{
    /// <summary>
    /// The gauge in use for the reading's kind, chosen at once when the shop has just one; or why it may not be used: out
    /// of date, or too coarse for the zone.
    /// </summary>
    public static (Gauge? Gauge, RunEvent.GaugeChosen? Chosen, Decision.Refused? Unfit) For(
        Deciding on,
        Taking taking,
        Limits limits
    )
    {
        if (taking.GaugeKind is not { } kind)
        {
            return (null, null, null);
        }

        string? id = IdOf(on, kind);
        if (id is null || !on.Shop.Gauges.TryGetValue(id, out Gauge? gauge))
        {
            Gauge[] ofKind = [.. OfKind(on, kind)];
            string list = string.Join(", ", ofKind.Select(g => $"{g.Id} ({g.Name})"));
            return (
                null,
                null,
                Deciding.No(
                    $"A {kind} gauge is to be chosen first.",
                    ofKind.Length == 0
                        ? $"The shop has none of the kind {kind}: add it to its gauges (in the menu, or procrunner gauges add)."
                        : $"Choose one: gauge {kind} = {list}"
                )
            );
        }

        RunEvent.GaugeChosen? chosen = on.State.Gauges.ContainsKey(kind) ? null : new RunEvent.GaugeChosen(kind, id);
        return (gauge, chosen, Unfit(on, taking, limits, gauge));
    }

    /// <summary>The gauge in use for a kind, or the only one that the shop has; null while one is to be chosen.</summary>
    public static string? IdOf(Deciding on, string kind) =>
        on.State.Gauges.GetValueOrDefault(kind) ?? OnlyOne(on, kind);

    private static IEnumerable<Gauge> OfKind(Deciding on, string kind) =>
        on.Shop.Gauges.Values.Where(g => g.Kind == kind);

    private static string? OnlyOne(Deciding on, string kind) =>
        OfKind(on, kind).Take(2).ToArray() is [{ } gauge] ? gauge.Id : null;

    /// <summary>
    /// Why a gauge may not be used at a gate, or null. The N:1 rule of ASME B89.7.3.1: the zone is at least N times as wide
    /// as the interval of uncertainty 2U. A reading that can't be below zero and has only a high limit has the zone from 0.
    /// </summary>
    public static Decision.Refused? Unfit(Deciding on, Taking taking, Limits limits, Gauge gauge)
    {
        if (gauge.CalibratedUntil is { } until && DateOnly.FromDateTime(on.Moment.Now.DateTime) > until)
        {
            return Deciding.No(
                $"{gauge.Id} ({gauge.Name}) is past its calibration: it was good until {until.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}.",
                $"Take another {gauge.Kind} gauge, or have this one calibrated and its date entered."
            );
        }

        if (Zone(limits) is not { } zone || zone.Dimension != gauge.Uncertainty.Dimension)
        {
            return null;
        }

        Exact interval = Exact.Of(gauge.Uncertainty);
        Rational needed = interval.Value * Rational.FromInteger(2) * Rational.FromDecimal(taking.GaugeRatio);
        Unit unit = gauge.Uncertainty.Unit;
        return zone.Value >= needed
            ? null
            : Deciding.No(
                $"{gauge.Id} ({gauge.Name}) can't tell here: the zone is {Show.In(zone, unit)} wide and its uncertainty is "
                    + $"±{gauge.Uncertainty}; at {taking.GaugeRatio.ToString("0.##", CultureInfo.InvariantCulture)}:1 the zone must be "
                    + $"{Show.In(new Exact(needed, zone.Dimension), unit)} or wider.",
                $"Take a finer {gauge.Kind} gauge."
            );
    }

    private static Exact? Zone(Limits limits) =>
        limits switch
        {
            { Low: { } low, High: { } high } => new Exact(high.Value - low.Value, low.Dimension),
            { Low: null, High: { Value.Sign: > 0 } high } => high,
            _ => null,
        };
}
