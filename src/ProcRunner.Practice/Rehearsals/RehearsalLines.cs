using System.Globalization;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs;

namespace ProcRunner.Practice.Rehearsals;

/// <summary>A rehearsal in lines of text, with plots of characters; 79 columns.</summary>
public static class RehearsalLines
{
    private const int Widest = 44;

    /// <summary>The lines.</summary>
    public static IEnumerable<string> Of(RehearsalResult result)
    {
        Tally tally = result.Tally;
        Plan plan = result.Binding.Plan;
        yield return $"PRACTICE. {plan.Procedure.Title} on {plan.Head.Title}";
        yield return $"{N(tally.Heads)} practice heads, seed {result.Seed.ToString(CultureInfo.InvariantCulture)}, {N(tally.Entries)} entries";
        yield return "";
        yield return Row("in spec first time", tally.FirstTime, tally.Heads);
        yield return Row("released", tally.Released, tally.Heads);
        yield return Row("given up", tally.Scrapped, tally.Heads);
        yield return Row("came to no end", tally.Stuck.Values.Sum(), tally.Heads);
        foreach (
            IEnumerable<string> part in new[]
            {
                Refusals(tally, plan),
                Escapes(tally, plan),
                Spreads(tally, plan),
                Effects(result),
                Approaches(result),
            }
        )
        {
            foreach (string line in part)
            {
                yield return line;
            }
        }
    }

    /// <summary>A share as a percentage.</summary>
    internal static string Share(long part, long of) =>
        of == 0
            ? "-"
            : (100.0 * part / of).ToString(
                part > 0 && part < of / 1000.0 ? "0.0000" : "0.0",
                CultureInfo.InvariantCulture
            ) + " %";

    /// <summary>An amount in base units as a number in a unit.</summary>
    internal static string In(double amount, Unit unit) =>
        ((amount - unit.Offset.ToDouble()) / unit.Factor.ToDouble()).ToString(
            "F" + (Show.DigitsOf(unit) + 1).ToString(CultureInfo.InvariantCulture),
            CultureInfo.InvariantCulture
        );

    /// <summary>A size in base units as a number in a unit.</summary>
    internal static string SizeIn(double size, Unit unit) =>
        (size / unit.Factor.ToDouble()).ToString(
            "F" + (Show.DigitsOf(unit) + 2).ToString(CultureInfo.InvariantCulture),
            CultureInfo.InvariantCulture
        );

    internal static Unit UnitOf(Plan plan, int characteristic) =>
        plan.Procedure.Characteristics[characteristic].UnitOn(plan.Head);

    /// <summary>The spreads worth a plot: of what cuts end in, at the release.</summary>
    internal static IEnumerable<((int Characteristic, string Kind) Key, Distribution Spread)> Plotted(
        Tally tally,
        Plan plan
    )
    {
        HashSet<int> cut =
        [
            .. plan
                .Steps.Where(s => s.Work is StepWork.Cut)
                .Select(s => plan.CharacteristicIndex(s.Taking!.Characteristic)),
        ];
        return tally
            .Spreads.Where(s => cut.Contains(s.Key.Characteristic) && !s.Value.LimitsShift)
            .Select(s => (s.Key, s.Value));
    }

    internal static string NameOf(Plan plan, (int Characteristic, string Kind) key) =>
        $"{plan.Procedure.Characteristics[key.Characteristic].Name} {key.Kind}".TrimEnd();

    private static IEnumerable<string> Refusals(Tally tally, Plan plan)
    {
        yield return "";
        yield return "Where heads were refused, of all heads";
        foreach ((int step, long heads) in tally.RefusedAt.OrderByDescending(r => r.Value).ThenBy(r => r.Key).Take(20))
        {
            yield return Row(plan.Steps[step].FullName, heads, tally.Heads);
        }

        foreach ((int step, long heads) in tally.ScrappedAt.OrderByDescending(r => r.Value))
        {
            yield return Row($"given up at {plan.Steps[step].FullName}", heads, tally.Heads);
        }

        foreach ((string why, long heads) in tally.Stuck.OrderByDescending(r => r.Value).Take(10))
        {
            yield return Row($"no end: {why}", heads, tally.Heads);
        }
    }

    private static IEnumerable<string> Escapes(Tally tally, Plan plan)
    {
        yield return "";
        yield return "Released and truly out of limits";
        yield return Row("values", tally.Escaped, tally.Judged);
        yield return Row("heads with one or more", tally.HeadsWithEscape, tally.Released);
        yield return $"  {"expected from the gauges' uncertainty", -46} {tally.Expected.ToString("F1", CultureInfo.InvariantCulture), 10}";
        yield return $"  {"that no gauge's error explains", -46} {N(tally.Unexplained), 10}";
        yield return $"  {"cuts deeper than the high limit, in truth", -46} {N(tally.CutsOver), 10}  {Share(tally.CutsOver, tally.Cuts)} of {N(tally.Cuts)}";
        foreach (Escape escape in tally.Escapes.Take(12))
        {
            Unit unit = UnitOf(plan, escape.Value.Characteristic);
            string fault = escape.Value.IsUnexplained ? "NOT EXPLAINED" : "";
            yield return $"  head {N(escape.Head)}, {plan.Procedure.Characteristics[escape.Value.Characteristic].Name} at {plan.PositionName(escape.Value.Position)} {escape.Value.Place}: true {In(escape.Value.TrueNow, unit)}, read {In(escape.Value.Shown, unit)}, p {escape.Conforms.ToString("F2", CultureInfo.InvariantCulture)} {fault}".TrimEnd();
        }
    }

    private static IEnumerable<string> Spreads(Tally tally, Plan plan)
    {
        yield return "";
        yield return $"{"At the release, in truth", -30} {"mean", 10} {"deviation", 10} {"least", 9} {"most", 9} {"Cpk", 5}";
        foreach (
            ((int Characteristic, string Kind) key, Distribution spread) in tally.Spreads.Where(s =>
                !s.Value.LimitsShift
            )
        )
        {
            Unit unit = UnitOf(plan, key.Characteristic);
            string cpk = spread.Capability is { } capability
                ? capability.ToString("F2", CultureInfo.InvariantCulture)
                : "";
            yield return $"{NameOf(plan, key), -30} {In(spread.Mean, unit), 10} {SizeIn(spread.Deviation, unit), 10} {In(spread.Least, unit), 9} {In(spread.Most, unit), 9} {cpk, 5}";
        }

        foreach (((int Characteristic, string Kind) key, Distribution spread) in Plotted(tally, plan))
        {
            yield return "";
            foreach (string line in Plot(NameOf(plan, key), spread, UnitOf(plan, key.Characteristic)))
            {
                yield return line;
            }
        }
    }

    private static IEnumerable<string> Plot(string name, Distribution spread, Unit unit)
    {
        long tallest = Math.Max(1, spread.Histogram.Max());
        yield return $"{name}, {unit.Symbol}: {N(spread.Count)} values, low {Limit(spread.Low, unit)}, high {Limit(spread.High, unit)}";
        for (int i = 0; i < Distribution.Bars; i++)
        {
            double from = spread.From + ((spread.To - spread.From) * i / Distribution.Bars);
            double to = spread.From + ((spread.To - spread.From) * (i + 1) / Distribution.Bars);
            bool isOut =
                (spread.Low is { } low && to <= low + 1e-9) || (spread.High is { } high && from >= high - 1e-9);
            long count = spread.Histogram[i];
            int length = count == 0 ? 0 : Math.Max(1, (int)(count * Widest / tallest));
            yield return $"  {In(from, unit), 10} {(isOut ? "out" : "   ")} {new string(isOut ? '!' : '#', length)} {(count > 0 ? N(count) : "")}".TrimEnd();
        }
    }

    private static IEnumerable<string> Effects(RehearsalResult result)
    {
        if (result.Plain is not { } plain)
        {
            yield break;
        }

        Plan plan = result.Binding.Plan;
        yield return "";
        yield return $"With one gauge's error taken away ({N(plain.Heads)} heads each; resolution stays)";
        yield return $"  {"gauge", -16} {"first time", 10} {"truly out", 10}  deviation of what is cut, in parts of itself";
        yield return $"  {"all as they are", -16} {Share(plain.FirstTime, plain.Heads), 10} {N(plain.Escaped), 10}";
        foreach (GaugeEffect effect in result.Gauges.OrderBy(g => Least(g.Without, plain, plan)))
        {
            string parts = string.Join(
                "  ",
                Plotted(plain, plan)
                    .Select(p =>
                        effect.Without.Spreads.TryGetValue(p.Key, out Distribution? without) && p.Spread.Deviation > 0
                            ? $"{NameOf(plan, p.Key)} {(without.Deviation / p.Spread.Deviation).ToString("F2", CultureInfo.InvariantCulture)}"
                            : ""
                    )
            );
            yield return $"  {effect.Kind, -16} {Share(effect.Without.FirstTime, effect.Without.Heads), 10} {N(effect.Without.Escaped), 10}  {parts}".TrimEnd();
        }
    }

    internal static double Least(Tally without, Tally plain, Plan plan) =>
        Plotted(plain, plan)
            .Select(p =>
                without.Spreads.TryGetValue(p.Key, out Distribution? spread) && p.Spread.Deviation > 0
                    ? spread.Deviation / p.Spread.Deviation
                    : 1
            )
            .DefaultIfEmpty(1)
            .Min();

    private static IEnumerable<string> Approaches(RehearsalResult result)
    {
        if (result.Approaches.Count == 0)
        {
            yield break;
        }

        yield return "";
        yield return "Cuts deeper than the high limit, by approach allowance and gauge";
        foreach (ApproachEffect effect in result.Approaches)
        {
            string times = effect.Times.ToString("0.#", CultureInfo.InvariantCulture);
            yield return $"  {effect.Setting} {effect.Allowance}, {effect.Gauge} error x {times}: {Share(effect.Tally.CutsOver, effect.Tally.Cuts)} of {N(effect.Tally.Cuts)} cuts; first time {Share(effect.Tally.FirstTime, effect.Tally.Heads)}";
        }
    }

    private static string Row(string what, long part, long of) => $"  {what, -46} {N(part), 10}  {Share(part, of), 9}";

    private static string Limit(double? limit, Unit unit) => limit is { } value ? In(value, unit) : "none";

    private static string N(long count) => count.ToString("#,0", CultureInfo.InvariantCulture);
}
