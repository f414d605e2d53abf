using ProcRunner.Practice.Bindings;
using ProcRunner.Quantities;

namespace ProcRunner.Practice.Rehearsals;

/// <summary>What a rehearsal found.</summary>
/// <param name="Binding">What was rehearsed.</param>
/// <param name="Seed">Where chance started from.</param>
/// <param name="Tally">What the heads came to.</param>
/// <param name="Gauges">The same heads with one gauge's error taken away; empty when not asked for.</param>
/// <param name="Plain">The first heads of the tally, with which those are compared; null when not asked for.</param>
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
    private static readonly decimal[] Shares = [0, 0.5m, 1, 2];
    private static readonly double[] Errors = [1, 3];

    /// <summary>How many heads a comparison has when nothing else is said: a fifth, and not so few that nothing can be told.</summary>
    public static int UsualRow(int heads) => Math.Min(heads, Math.Max(400, heads / 5));

    /// <summary>Rehearses.</summary>
    /// <param name="binding">What.</param>
    /// <param name="seed">Where chance starts from.</param>
    /// <param name="heads">How many heads.</param>
    /// <param name="row">How many heads for each comparison of gauges and allowances; 0 for none.</param>
    /// <param name="cores">On how many cores.</param>
    /// <param name="progress">Told what is being done, how many heads of it are done, and of how many.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static RehearsalResult Of(
        Binding binding,
        ulong seed,
        int heads,
        int row,
        int cores,
        Action<string, int, int> progress,
        CancellationToken stop
    )
    {
        int whole = row >= heads ? heads : row / Rehearsal.InChunk * Rehearsal.InChunk;
        (Tally tally, Tally plain) = Rehearsal.Run(
            binding,
            seed,
            (heads, whole),
            cores,
            done => progress("heads", done, heads),
            stop
        );
        if (whole == 0)
        {
            return new RehearsalResult(binding, seed, tally, [], null, []);
        }

        List<(string Kind, Binding Other)> gauges =
        [
            .. binding.Setup.Gauges.Select(g => (g.Gauge.Kind, Rehearsal.WithoutErrorOf(binding, g.Gauge.Kind))),
        ];
        ApproachEffect[] approaches = [.. Variants(binding, plain)];
        int rows = gauges.Count + approaches.Count(a => !a.IsNow);
        int played = 0;
        Tally Play(Binding other)
        {
            int before = played++ * whole;
            return Rehearsal.Run(
                other,
                seed,
                whole,
                cores,
                done => progress("heads to compare", before + done, rows * whole),
                stop
            );
        }

        return new RehearsalResult(
            binding,
            seed,
            tally,
            [.. gauges.Select(g => new GaugeEffect(g.Kind, Play(g.Other)))],
            plain,
            [.. approaches.Select(a => a.IsNow ? a : a with { Tally = Play(With(binding, a)) })]
        );
    }

    /// <summary>How the share in spec the first time changes on the same heads.</summary>
    /// <param name="other">What the same heads come to in another way.</param>
    public PairedChange ChangeTo(Tally other)
    {
        long gained = 0;
        long lost = 0;
        int heads = Math.Min(Plain?.FirstTimes.Count ?? 0, other.FirstTimes.Count);
        for (int i = 0; i < heads; i++)
        {
            gained += other.FirstTimes[i] && !Plain!.FirstTimes[i] ? 1 : 0;
            lost += Plain!.FirstTimes[i] && !other.FirstTimes[i] ? 1 : 0;
        }

        return new PairedChange(gained, lost, heads);
    }

    // The allowance and the gauge as they are have been played already.
    private static IEnumerable<ApproachEffect> Variants(Binding binding, Tally plain)
    {
        foreach ((string setting, string gauge, IReadOnlyList<int> steps) in Rehearsal.ApproachSettings(binding.Plan))
        {
            Quantity now = binding.Plan.Procedure.Settings[setting].Value;
            foreach (decimal share in Shares)
            {
                Quantity allowance = new(now.Value * share, now.Unit);
                foreach (double error in Errors)
                {
                    yield return new ApproachEffect(
                        setting,
                        allowance,
                        gauge,
                        error,
                        IsNow: share == 1 && error == 1,
                        steps,
                        plain
                    );
                }
            }
        }
    }

    private static Binding With(Binding binding, ApproachEffect effect) =>
        Rehearsal.WithErrorOf(
            Rehearsal.WithSetting(binding, effect.Setting, effect.Allowance),
            effect.Gauge,
            effect.Times
        );
}
