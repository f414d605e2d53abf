using ProcRunner.Practice.Bindings;
using ProcRunner.Quantities;

namespace ProcRunner.Practice.Rehearsals;

/// <summary>What a rehearsal found.</summary>
/// <param name="Binding">What was rehearsed.</param>
/// <param name="Seed">Where chance started from.</param>
/// <param name="Tally">What the heads came to.</param>
/// <param name="Gauges">The same heads with one gauge's error taken away; empty when not asked for.</param>
/// <param name="Plain">The heads that those are compared with; null when not asked for.</param>
/// <param name="Approaches">Overshoot by approach allowance and gauge; empty when not asked for.</param>
public sealed record RehearsalResult(
    Binding Binding,
    ulong Seed,
    Tally Tally,
    IReadOnlyList<GaugeEffect> Gauges,
    Tally? Plain,
    IReadOnlyList<ApproachEffect> Approaches
)
{
    private static readonly double[] Shares = [0, 0.5, 1, 2];
    private static readonly double[] Errors = [1, 3];

    /// <summary>Rehearses.</summary>
    /// <param name="binding">What.</param>
    /// <param name="seed">Where chance starts from.</param>
    /// <param name="heads">How many heads.</param>
    /// <param name="cores">On how many cores.</param>
    /// <param name="compares">True to rehearse parts of it again without each gauge's error, and with other allowances.</param>
    /// <param name="progress">Told what is being done, how many heads of it are done, and of how many.</param>
    public static RehearsalResult Of(
        Binding binding,
        ulong seed,
        int heads,
        int cores,
        bool compares,
        Action<string, int, int> progress
    )
    {
        Tally Run(Binding one, int count, string what) =>
            Rehearsal.Run(one, seed, count, cores, done => progress(what, done, count));
        Tally tally = Run(binding, heads, "heads");
        if (!compares)
        {
            return new RehearsalResult(binding, seed, tally, [], null, []);
        }

        int fewer = Math.Max(20, heads / 10);
        Tally plain = Run(binding, fewer, "heads to compare with");
        GaugeEffect[] gauges =
        [
            .. binding.Setup.Gauges.Select(g => new GaugeEffect(
                g.Gauge.Kind,
                Run(Rehearsal.WithoutErrorOf(binding, g.Gauge.Kind), fewer, $"heads without the {g.Gauge.Kind}'s error")
            )),
        ];
        List<ApproachEffect> approaches = [];
        foreach ((string setting, string gauge) in Rehearsal.ApproachSettings(binding.Plan).DistinctBy(a => a.Setting))
        {
            Quantity now = binding.Plan.Procedure.Settings[setting].Value;
            foreach (double share in Shares)
            {
                Quantity allowance = new(now.Value * (decimal)share, now.Unit);
                foreach (double error in Errors)
                {
                    Binding other = Rehearsal.WithErrorOf(
                        Rehearsal.WithSetting(binding, setting, allowance),
                        gauge,
                        error
                    );
                    approaches.Add(
                        new ApproachEffect(
                            setting,
                            allowance,
                            gauge,
                            error,
                            Run(other, fewer, $"heads with {setting} {allowance}")
                        )
                    );
                }
            }
        }

        return new RehearsalResult(binding, seed, tally, gauges, plain, approaches);
    }
}
