using ProcRunner.Practice.Bindings;
using ProcRunner.Practice.Operators;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Shop;

namespace ProcRunner.Practice.Rehearsals;

/// <summary>Many practice heads through one procedure, on several cores. The same seed gives the same tally on any number of them.</summary>
public static class Rehearsal
{
    /// <summary>How many heads are played one after the other before their tally is added to the others.</summary>
    public const int InChunk = 20;

    /// <summary>Plays heads 0 to <paramref name="heads"/> less 1.</summary>
    /// <param name="binding">The setup on its procedure and head.</param>
    /// <param name="seed">Where all chance starts from.</param>
    /// <param name="heads">How many.</param>
    /// <param name="cores">On how many cores, 1 or more.</param>
    /// <param name="progress">Told how many are done; called from any thread, one at a time.</param>
    /// <param name="stop">Stops it between two chunks of heads.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static Tally Run(
        Binding binding,
        ulong seed,
        int heads,
        int cores,
        Action<int> progress,
        CancellationToken stop = default
    ) => Run(binding, seed, (heads, 0), cores, progress, stop).All;

    /// <summary>As the other, with a tally of the first few heads beside that of all.</summary>
    /// <param name="binding">The setup on its procedure and head.</param>
    /// <param name="seed">Where all chance starts from.</param>
    /// <param name="heads">How many, and how many of them make the first few: whole chunks of <see cref="InChunk"/>.</param>
    /// <param name="cores">On how many cores, 1 or more.</param>
    /// <param name="progress">Told how many are done; called from any thread, one at a time.</param>
    /// <param name="stop">Stops it between two chunks of heads.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static (Tally All, Tally First) Run(
        Binding binding,
        ulong seed,
        (int All, int First) heads,
        int cores,
        Action<int> progress,
        CancellationToken stop
    )
    {
        ShopState shop = PracticeShop.Of(binding.Setup);
        Tally all = new(binding.Plan);
        Tally first = new(binding.Plan);
        SortedDictionary<int, Tally> early = [];
        int next = 0;
        int done = 0;
        Lock merging = new();
        int chunks = (heads.All + InChunk - 1) / InChunk;
        Parallel.For(
            0,
            chunks,
            new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, cores), CancellationToken = stop },
            chunk =>
            {
                Tally part = new(binding.Plan);
                for (int i = chunk * InChunk; i < Math.Min(heads.All, (chunk + 1) * InChunk); i++)
                {
                    part.Add(i, ModelOperator.Play(binding, shop, seed, (ulong)i));
                }

                // Added up in the order of the heads, whoever is ready first: sums of doubles depend on their order.
                lock (merging)
                {
                    early[chunk] = part;
                    while (early.Remove(next, out Tally? ready))
                    {
                        all.Add(ready);
                        if (next * InChunk < heads.First)
                        {
                            first.Add(ready);
                        }

                        next++;
                    }

                    done += (int)part.Heads;
                    progress(done);
                }
            }
        );
        return (all, first);
    }

    /// <summary>A binding whose gauges of one kind read without error; the shop's knowledge of them stays.</summary>
    public static Binding WithoutErrorOf(Binding binding, string kind) =>
        binding.With(
            binding.Setup with
            {
                Gauges =
                [
                    .. binding.Setup.Gauges.Select(g =>
                        g.Gauge.Kind == kind
                            ? g with
                            {
                                Bias = 0,
                                Spread = 0,
                                Feel = 0,
                                WrongTurns = 0,
                                NotZeroed = 0,
                                PilotBend = 0,
                                DirtySeats = 0,
                            }
                            : g
                    ),
                ],
            }
        );

    /// <summary>A binding whose gauges of one kind err so many times as much; the shop's knowledge of them stays.</summary>
    public static Binding WithErrorOf(Binding binding, string kind, double times) =>
        binding.With(
            binding.Setup with
            {
                Gauges =
                [
                    .. binding.Setup.Gauges.Select(g =>
                        g.Gauge.Kind == kind
                            ? g with
                            {
                                Bias = g.Bias * times,
                                Spread = g.Spread * times,
                                Feel = g.Feel * times,
                                PilotBend = g.PilotBend * times,
                                DirtBy = g.DirtBy * times,
                            }
                            : g
                    ),
                ],
            }
        );

    /// <summary>
    /// The settings from which cuts take how far they stop short, with the kind of gauge that ends such cuts and the indices of
    /// their steps.
    /// </summary>
    public static IReadOnlyList<(string Setting, string Gauge, IReadOnlyList<int> Steps)> ApproachSettings(Plan plan)
    {
        const string Prefix = "setting.";
        return
        [
            .. plan
                .Steps.SelectMany(s =>
                    s.Work is StepWork.Cut cut
                        ? cut
                            .StopShort.Names.Where(n => n.StartsWith(Prefix, StringComparison.Ordinal))
                            .Select(n => (Setting: n[Prefix.Length..], Gauge: cut.Taking.GaugeKind ?? "", s.Index))
                        : []
                )
                .GroupBy(c => (c.Setting, c.Gauge))
                .Select(g => (g.Key.Setting, g.Key.Gauge, (IReadOnlyList<int>)[.. g.Select(c => c.Index)])),
        ];
    }

    /// <summary>A binding whose procedure has another value for a setting.</summary>
    public static Binding WithSetting(Binding binding, string setting, Quantity value)
    {
        Procedure procedure = binding.Plan.Procedure;
        Dictionary<string, Setting> settings = new(procedure.Settings, StringComparer.Ordinal);
        settings[setting] = settings[setting] with { Value = value };
        Plan plan = new(
            procedure with
            {
                Settings = System.Collections.Frozen.FrozenDictionary.ToFrozenDictionary(
                    settings,
                    StringComparer.Ordinal
                ),
            },
            binding.Plan.Head
        );
        return Binding.Of(plan, binding.Setup).Binding ?? binding;
    }
}
