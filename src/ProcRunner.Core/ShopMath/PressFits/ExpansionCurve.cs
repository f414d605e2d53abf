namespace ProcRunner.ShopMath;

/// <summary>
/// Thermal expansion that depends on temperature: the quadratic through tabulated points by least squares (the straight line
/// through two, a constant from one), integrated. After A. Kaw, University of South Florida, notes on underestimating contraction
/// for a shrink fit. Nothing is said outside the table.
/// </summary>
public sealed class ExpansionCurve
{
    // alpha = a + b t + c t² with t = (T - middle) / half, which keeps the equations well conditioned.
    private readonly double _middle;
    private readonly double _half;
    private readonly double[] _terms;

    private ExpansionCurve(double low, double high, double middle, double half, double[] terms)
    {
        LowestCelsius = low;
        HighestCelsius = high;
        _middle = middle;
        _half = half;
        _terms = terms;
    }

    /// <summary>The coldest point of the table.</summary>
    public double LowestCelsius { get; }

    /// <summary>The hottest point of the table.</summary>
    public double HighestCelsius { get; }

    /// <summary>The curve of a table. No point, a repeated temperature or a curve that falls to 0 within the table is a fault.</summary>
    /// <param name="points">Temperature in degrees Celsius and expansion per kelvin, in any order.</param>
    public static ShopResult<ExpansionCurve> Of(IReadOnlyList<(double Celsius, double PerKelvin)> points)
    {
        if (points.Count == 0 || points.Select(point => point.Celsius).Distinct().Count() < points.Count)
        {
            return new ShopFault(
                "temperatures",
                FormattableString.Invariant($"{points.Count} points"),
                "the table needs one point or more, each of another temperature"
            );
        }

        double low = points.Min(point => point.Celsius);
        double high = points.Max(point => point.Celsius);
        double middle = (low + high) / 2;
        double half = high > low ? (high - low) / 2 : 1;
        double[] terms = LeastSquares.Polynomial(
            [.. points.Select(point => (point.Celsius - middle) / half)],
            [.. points.Select(point => point.PerKelvin)],
            Math.Min(points.Count - 1, 2)
        );
        ExpansionCurve curve = new(low, high, middle, half, [.. terms, .. new double[3 - terms.Length]]);
        return curve.IsAbove0()
            ? curve
            : new ShopFault("expansions", "the table", "the curve through it must stay above 0 within the table");
    }

    /// <summary>The expansion at a temperature, per kelvin.</summary>
    /// <param name="celsius">Within the table.</param>
    public ShopResult<double> PerKelvinAt(double celsius) =>
        Allowed.Within("temperature", celsius, LowestCelsius, HighestCelsius, "degC") is { } fault
            ? fault
            : Value((celsius - _middle) / _half);

    /// <summary>How a length changes from one temperature to another, mm: length x integral of the expansion.</summary>
    /// <param name="lengthMillimetres">Not below 0.</param>
    /// <param name="startCelsius">Within the table.</param>
    /// <param name="endCelsius">Within the table.</param>
    public ShopResult<double> LengthChangeMillimetres(
        double lengthMillimetres,
        double startCelsius,
        double endCelsius
    ) =>
        (
            Allowed.Within("length", lengthMillimetres, 0, double.MaxValue, "mm")
            ?? Allowed.Within("start", startCelsius, LowestCelsius, HighestCelsius, "degC")
            ?? Allowed.Within("end", endCelsius, LowestCelsius, HighestCelsius, "degC")
        )
            is { } fault
            ? fault
            : lengthMillimetres * (Integral(endCelsius) - Integral(startCelsius));

    /// <summary>The temperature that changes a length by so much, degrees Celsius; found by halving, to the last digits of a double.</summary>
    /// <param name="lengthMillimetres">Above 0.</param>
    /// <param name="changeMillimetres">Below 0 to chill. A change that the table's range can't give is a fault.</param>
    /// <param name="startCelsius">Within the table.</param>
    public ShopResult<double> CelsiusForChange(double lengthMillimetres, double changeMillimetres, double startCelsius)
    {
        ShopFault? fault =
            Allowed.Above0("length", lengthMillimetres, "mm")
            ?? Allowed.Within("start", startCelsius, LowestCelsius, HighestCelsius, "degC");
        if (fault is not null)
        {
            return fault;
        }

        double wanted = changeMillimetres / lengthMillimetres;
        double start = Integral(startCelsius);
        double least = Integral(LowestCelsius) - start;
        double most = Integral(HighestCelsius) - start;
        if (!(wanted >= least && wanted <= most))
        {
            double end = wanted < least ? LowestCelsius : HighestCelsius;
            double reached = lengthMillimetres * (wanted < least ? least : most);
            return new ShopFault(
                "change",
                Allowed.Show(changeMillimetres, "mm"),
                $"at the end of the table, {Allowed.Show(end, "degC")}, it is {Allowed.Show(reached, "mm")}"
            );
        }

        (double low, double high) = (LowestCelsius, HighestCelsius);
        while ((low + high) / 2 is var half && half > low && half < high)
        {
            (low, high) = Integral(half) - start < wanted ? (half, high) : (low, half);
        }

        return high;
    }

    private double Value(double t) => _terms[0] + (t * (_terms[1] + (t * _terms[2])));

    private double Integral(double celsius)
    {
        double t = (celsius - _middle) / _half;
        return _half * t * (_terms[0] + (t * ((_terms[1] / 2) + (t * _terms[2] / 3))));
    }

    // The lowest place of a parabola within the table is at an end or at its turning point.
    private bool IsAbove0()
    {
        double turn = _terms[2] == 0 ? 0 : Math.Clamp(-_terms[1] / (2 * _terms[2]), -1, 1);
        return Value(-1) > 0 && Value(1) > 0 && Value(turn) > 0;
    }
}
