namespace ProcRunner.ShopMath;

/// <summary>
/// Two parallel planes that enclose points with the least vertical distance between them, by linear programming.
/// </summary>
/// <remarks>
/// The dual of "least t with low &lt;= z - a x - b y &lt;= low + t": weights u on points that touch above and v on points that
/// touch below, each adding up to 1, with one centre of mass in x and y; sum z (u - v) is greatest at the optimum, where it
/// equals t. Revised simplex with a basis of four touching points: the multipliers of a basis are a pair of planes, and the
/// point farthest outside them enters. When the distance doesn't grow, the first point outside enters (Bland 1977), so that
/// it can't go round. Expects coordinates of size 1 about 0.
/// </remarks>
internal sealed class ZoneSimplex(double[] x, double[] y, double[] z)
{
    private const double Tolerance = 1e-13;
    private const double SmallestPivot = 1e-10;

    // A weight or a difference of ratios below this is rounding, and counts as 0: ties must be seen as ties.
    private const double Rounding = 1e-11;
    private const int MostRounds = 20_000;

    // Index of each basic point, and whether it touches the plane above.
    private readonly int[] _point = new int[4];
    private readonly bool[] _above = new bool[4];
    private readonly double[] _weights = new double[4];

    /// <summary>Slopes of the planes found.</summary>
    public (double Along, double Across) Slopes { get; private set; }

    /// <summary>Whether it ended because no point lies outside; else rounding stopped it, and the planes are the last ones.</summary>
    public bool IsOptimal { get; private set; }

    /// <summary>The points that carry weight: those that hold the planes apart.</summary>
    public IEnumerable<(int Point, bool Above)> Touching =>
        Enumerable.Range(0, 4).Where(at => _weights[at] > Tolerance).Select(at => (_point[at], _above[at]));

    /// <summary>Works from three points that don't lie in one line.</summary>
    public void Solve(int first, int second, int third)
    {
        (_point[0], _point[1], _point[2], _point[3]) = (first, second, third, first);
        (_above[0], _above[1], _above[2], _above[3]) = (true, true, true, false);
        double best = double.NegativeInfinity;
        Span<double> planes = stackalloc double[4];
        for (int round = 0; round < MostRounds; round++)
        {
            Planes(planes);
            if (!double.IsFinite(planes[0] + planes[1] + planes[2] + planes[3]))
            {
                return;
            }

            Slopes = (planes[2], planes[3]);
            Weigh();
            double apart = planes[0] + planes[1];
            bool grows = apart > best + Tolerance;
            best = Math.Max(best, apart);
            if (!TryEnter(planes, first: !grows, out int point, out bool above))
            {
                IsOptimal = true;
                return;
            }

            if (!TryExchange(point, above, first: !grows))
            {
                return;
            }
        }
    }

    // The upper plane is z = a x + b y + planes[0], the lower z = a x + b y - planes[1].
    private void Planes(Span<double> planes)
    {
        Span<double> rows = stackalloc double[16];
        for (int at = 0; at < 4; at++)
        {
            Column(_point[at], _above[at], rows.Slice(4 * at, 4));
            planes[at] = _above[at] ? z[_point[at]] : -z[_point[at]];
        }

        FourEquations.Solve(rows, planes);
    }

    private void Weigh()
    {
        Span<double> rows = stackalloc double[16];
        Basis(rows);
        Span<double> sums = [1, 1, 0, 0];
        FourEquations.Solve(rows, sums);
        for (int at = 0; at < 4; at++)
        {
            _weights[at] = sums[at] < Rounding ? 0 : sums[at];
        }
    }

    private void Basis(Span<double> rows)
    {
        Span<double> column = stackalloc double[4];
        for (int at = 0; at < 4; at++)
        {
            Column(_point[at], _above[at], column);
            for (int row = 0; row < 4; row++)
            {
                rows[(4 * row) + at] = column[row];
            }
        }
    }

    private void Column(int point, bool above, Span<double> column)
    {
        column[0] = above ? 1 : 0;
        column[1] = above ? 0 : 1;
        column[2] = above ? x[point] : -x[point];
        column[3] = above ? y[point] : -y[point];
    }

    private bool TryEnter(ReadOnlySpan<double> planes, bool first, out int point, out bool above)
    {
        double farthest = Tolerance;
        point = -1;
        above = false;
        for (int i = 0; i < z.Length; i++)
        {
            double height = z[i] - (planes[2] * x[i]) - (planes[3] * y[i]);
            double over = height - planes[0];
            double under = -height - planes[1];
            if (Math.Max(over, under) > farthest)
            {
                farthest = Math.Max(over, under);
                point = i;
                above = over > under;
                if (first)
                {
                    break;
                }
            }
        }

        return point >= 0;
    }

    private bool TryExchange(int point, bool above, bool first)
    {
        Span<double> rows = stackalloc double[16];
        Span<double> change = stackalloc double[4];
        Basis(rows);
        Column(point, above, change);
        FourEquations.Solve(rows, change);
        double least = double.PositiveInfinity;
        for (int at = 0; at < 4; at++)
        {
            least = Math.Min(least, Ratio(change, at));
        }

        int leaving = -1;
        for (int at = 0; at < 4; at++)
        {
            bool isTied = Ratio(change, at) <= least + Rounding;

            // Of those that tie, the largest pivot keeps digits; when nothing grows the first one, as Bland's rule wants.
            bool isBetter = leaving < 0 || (first ? Order(at) < Order(leaving) : change[at] > change[leaving]);
            leaving = isTied && isBetter ? at : leaving;
        }

        if (double.IsFinite(least))
        {
            _point[leaving] = point;
            _above[leaving] = above;
        }

        return double.IsFinite(least);
    }

    private double Ratio(ReadOnlySpan<double> change, int at) =>
        change[at] > SmallestPivot ? _weights[at] / change[at] : double.PositiveInfinity;

    private int Order(int at) => (2 * _point[at]) + (_above[at] ? 0 : 1);
}
