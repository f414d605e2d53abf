using System.Globalization;
using ProcRunner.Runs;

namespace ProcRunner.Benchmarks;

/// <summary>Entries folded per second on one core: the demo's whole trail into a new state, again and again.</summary>
internal static class FoldBenchmark
{
    private const double Goal = 1_000_000;
    private const int Samples = 15;
    private const int Folds = 400;

    public static Result Run(DemoRun demo)
    {
        Fold(demo); // The compiler's second tier is reached before anything is measured.
        Thread.Sleep(300);
        Fold(demo);
        List<double> perSecond = [];
        for (int i = 0; i < Samples; i++)
        {
            double milliseconds = Timing.Of(() => Fold(demo));
            perSecond.Add(Folds * demo.Events.Length / milliseconds * 1000);
        }

        double median = Timing.Quantile(perSecond, 0.5);
        return new(
            "entries folded per second, one core",
            "1,000,000",
            string.Create(
                CultureInfo.InvariantCulture,
                $"median {median:N0} (slowest of {Samples} {perSecond.Min():N0}, fastest {perSecond.Max():N0}); {median / Goal:0.00} of the goal"
            ),
            median >= Goal
        );
    }

    private static void Fold(DemoRun demo)
    {
        for (int i = 0; i < Folds; i++)
        {
            RunState state = new(demo.Plan, "demo");
            for (int entry = 0; entry < demo.Events.Length; entry++)
            {
                state.Apply(entry + 1, demo.Events[entry]);
            }

            if (state.Standing != JobStanding.Released)
            {
                throw new InvalidOperationException("The demo job isn't released.");
            }
        }
    }
}
