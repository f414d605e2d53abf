using System.Globalization;
using ProcRunner.ShopMath;

namespace ProcRunner.Benchmarks.Maths;

/// <summary>Minimum-zone flatness of many points, over surfaces that are easy and surfaces made to be hard.</summary>
internal static class FlatnessBenchmark
{
    private static readonly (string Name, Func<double, double, Random, double> Height)[] Surfaces =
    [
        ("flat with noise of 10 µm", (_, _, random) => 0.01 * random.NextDouble()),
        ("dished by 50 µm, no noise", (x, y, _) => 0.05 * ((x * x) + (y * y))),
        (
            "dished by 50 µm with noise of 5 µm",
            (x, y, random) => (0.05 * ((x * x) + (y * y))) + (0.005 * random.NextDouble())
        ),
        (
            "twisted by 80 µm, tilted by 2 mm",
            (x, y, random) => (0.08 * x * y) + (2 * x) + (0.002 * random.NextDouble())
        ),
        ("read in steps of 1 µm: nearly all in common planes", (_, _, random) => 0.001 * random.Next(0, 6)),
        ("perfectly flat", (_, _, _) => 0),
        ("perfectly flat but for one pit", (x, y, _) => x is > 0.05 and < 0.11 && y is > 0.05 and < 0.14 ? -0.05 : 0),
    ];

    public static IEnumerable<Result> Run()
    {
        foreach ((int count, double goal, int samples) in ((int, double, int)[])[(1_000, 50, 15), (100_000, 1_000, 5)])
        {
            foreach ((string name, Func<double, double, Random, double> height) in Surfaces)
            {
                foreach (bool onGrid in (bool[])[true, false])
                {
                    yield return Run(name, Points(count, height, onGrid), onGrid, goal, samples);
                }
            }
        }
    }

    private static Result Run(string name, SurfacePoint[] points, bool onGrid, double goal, int samples)
    {
        MinimumZone? zone = null;
        List<double> times = [];
        for (int i = 0; i <= samples; i++)
        {
            double time = Timing.Of(() =>
                zone = MinimumZone.Of(points).TryGet(out MinimumZone? found, out _) ? found : null
            );
            if (i > 0)
            {
                times.Add(time);
            }
        }

        double median = Timing.Quantile(times, 0.5);
        return new(
            $"minimum zone of {points.Length:N0} points {(onGrid ? "on a grid" : "at random places")}, {name}",
            string.Create(CultureInfo.InvariantCulture, $"under {goal:N0} ms, proved the least"),
            string.Create(
                CultureInfo.InvariantCulture,
                $"median {median:0.0} ms (slowest of {samples} {times.Max():0.0}); {zone?.VerticalMillimetres * 1000:0.000} µm, {(zone?.IsExact == true ? "proved the least" : "an upper bound")}"
            ),
            median < goal && zone?.IsExact == true
        );
    }

    // A deck of 400 x 200 mm; heights from -1 to 1 in both directions.
    private static SurfacePoint[] Points(int count, Func<double, double, Random, double> height, bool onGrid)
    {
        Random random = new(20260101);
        int columns = (int)Math.Round(Math.Sqrt(2.0 * count));
        SurfacePoint[] points = new SurfacePoint[count];
        for (int i = 0; i < count; i++)
        {
            double x = onGrid ? (2.0 * (i % columns) / (columns - 1)) - 1 : (2 * random.NextDouble()) - 1;
            double y = onGrid ? (2.0 * (i / columns) * columns / count) - 1 : (2 * random.NextDouble()) - 1;
            points[i] = new SurfacePoint(200 * x, 100 * y, height(x, y, random));
        }

        return points;
    }
}
