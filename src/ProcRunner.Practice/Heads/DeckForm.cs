namespace ProcRunner.Practice.Heads;

/// <summary>
/// The deck as heights on a grid of 5 by 5 points, outward from a plane that stays with the casting, in mm. Along runs front
/// to rear, across left to right, each from -1 to 1.
/// </summary>
internal sealed class DeckForm
{
    private const int N = 5;

    // The pit lies in the middle, beside the fire rings.
    private const int Middle = N * N / 2;

    private static readonly (int Along, int Across)[] CornerPoints =
    [
        (0, 0),
        (0, N - 1),
        (N - 1, 0),
        (N - 1, N - 1),
        (2, 2),
    ];

    private readonly double[] _heights = new double[N * N];
    private readonly bool[] _cut = new bool[N * N];
    private readonly double _casting;
    private readonly double _pit;
    private double _removedAtPit;
    private double? _firstTouched;

    public DeckForm(
        double casting,
        double tiltAlong,
        double tiltAcross,
        double bowAlong,
        double bowAcross,
        double twist,
        double pit
    )
    {
        (_casting, _pit) = (casting, pit);
        for (int i = 0; i < _heights.Length; i++)
        {
            double x = ((i / N) - 2) / 2.0;
            double y = ((i % N) - 2) / 2.0;
            _heights[i] =
                (tiltAlong * x / 2)
                + (tiltAcross * y / 2)
                - (bowAlong * x * x)
                - (bowAcross * y * y)
                + (twist * x * y / 2);
        }
    }

    /// <summary>What came off from the highest spot that was touched first.</summary>
    public double Taken { get; private set; }

    /// <summary>Where the highest spot is.</summary>
    public double Highest => _heights.Max();

    /// <summary>High spot to low spot over the casting's own plane.</summary>
    public double Range => _heights.Max() - _heights.Min();

    /// <summary>The deepest pit that is left.</summary>
    public double Pit => Math.Max(0, _pit - _removedAtPit);

    /// <summary>True while some of the old surface is left.</summary>
    public bool HasOldSurface => !Array.TrueForAll(_cut, c => c);

    public double Thickness(int corner) => _casting + At(CornerPoints[corner].Along, CornerPoints[corner].Across);

    /// <summary>The deck's height at a valve's place.</summary>
    /// <param name="along">From 0 at the front to 1 at the rear.</param>
    /// <param name="across">From 0 at the left to 1 at the right.</param>
    public double HeightAt(double along, double across)
    {
        double x = Math.Clamp(along, 0, 1) * (N - 1);
        double y = Math.Clamp(across, 0, 1) * (N - 1);
        int i = Math.Min((int)x, N - 2);
        int j = Math.Min((int)y, N - 2);
        (double u, double v) = (x - i, y - j);
        return ((1 - u) * (((1 - v) * At(i, j)) + (v * At(i, j + 1))))
            + (u * (((1 - v) * At(i + 1, j)) + (v * At(i + 1, j + 1))));
    }

    /// <summary>How far the deck leaves the straight line between a line's ends: the larger of above and below, taken together.</summary>
    public double LineRange(int line)
    {
        ReadOnlySpan<double> points = Points(line);
        double most = 0;
        double least = 0;
        for (int k = 0; k < N; k++)
        {
            double straight = points[0] + ((points[^1] - points[0]) * k / (N - 1));
            most = Math.Max(most, points[k] - straight);
            least = Math.Min(least, points[k] - straight);
        }

        return most - least;
    }

    /// <summary>Another skim is begun: what it takes is counted from the highest spot as it is now.</summary>
    public void BeginSkim() => (_firstTouched, Taken) = (null, 0);

    /// <summary>
    /// The cutter runs over the deck: what stands above its plane comes off, and the cutter leaves its own small form.
    /// </summary>
    /// <param name="from">The highest spot when the cutter was set to it.</param>
    /// <param name="depth">How far the plane lies below that spot.</param>
    /// <param name="leanAlong">How much the set-up leans front to rear.</param>
    /// <param name="leanAcross">And left to right.</param>
    /// <param name="left">The form that the cutter leaves, point by point.</param>
    public void Skim(double from, double depth, double leanAlong, double leanAcross, ReadOnlySpan<double> left)
    {
        for (int i = 0; i < _heights.Length; i++)
        {
            double x = ((i / N) - 2) / 2.0;
            double y = ((i % N) - 2) / 2.0;
            double plane = from - depth + (leanAlong * x / 2) + (leanAcross * y / 2) + left[i];
            double removed = _heights[i] - plane;
            _cut[i] |= removed > 0;
            _removedAtPit += i == Middle ? Math.Max(0, removed) : 0;
            _heights[i] = Math.Min(_heights[i], plane);
        }

        _firstTouched ??= from;
        Taken = Math.Max(Taken, _firstTouched.Value - (from - depth));
    }

    private double[] Points(int line) =>
        [
            .. Enumerable
                .Range(0, N)
                .Select(k =>
                    line switch
                    {
                        0 => At(k, 0),
                        1 => At(k, 2),
                        2 => At(k, N - 1),
                        3 => At(0, k),
                        4 => At(2, k),
                        5 => At(N - 1, k),
                        6 => At(k, k),
                        _ => At(k, N - 1 - k),
                    }
                ),
        ];

    private double At(int along, int across) => _heights[(along * N) + across];
}
