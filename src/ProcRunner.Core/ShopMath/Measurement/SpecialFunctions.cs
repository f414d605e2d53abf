namespace ProcRunner.ShopMath;

/// <summary>Gamma, error and incomplete beta functions, to about 14 digits.</summary>
internal static class SpecialFunctions
{
    private const double Tiny = 1e-300;
    private const double Precision = 1e-16;
    private const int MostTerms = 10_000;

    // Lanczos' approximation, g = 7, n = 9 (coefficients of Godfrey 2001).
    private static readonly double[] Lanczos =
    [
        0.99999999999980993,
        676.5203681218851,
        -1259.1392167224028,
        771.32342877765313,
        -176.61502916214059,
        12.507343278686905,
        -0.13857109526572012,
        9.9843695780195716e-6,
        1.5056327351493116e-7,
    ];

    /// <summary>Natural logarithm of the gamma function, x above 0.</summary>
    public static double LogGamma(double x)
    {
        if (x < 0.5)
        {
            return Math.Log(Math.PI / Math.Sin(Math.PI * x)) - LogGamma(1 - x);
        }

        double sum = Lanczos[0];
        for (int i = 1; i < Lanczos.Length; i++)
        {
            sum += Lanczos[i] / (x - 1 + i);
        }

        double t = x + 6.5;
        return (0.5 * Math.Log(2 * Math.PI)) + ((x - 0.5) * Math.Log(t)) - t + Math.Log(sum);
    }

    /// <summary>1 - erf(x), without loss for large x: Taylor series near 0, continued fraction beyond.</summary>
    public static double ErrorComplement(double x) =>
        x < 0 ? 2 - ErrorComplement(-x)
        : x < 2 ? 1 - ErrorSeries(x)
        : ErrorFraction(x);

    /// <summary>Regularised incomplete beta function, by Lentz' continued fraction (DLMF 8.17.22).</summary>
    /// <param name="x">0 to 1.</param>
    /// <param name="a">Above 0.</param>
    /// <param name="b">Above 0.</param>
    public static double IncompleteBeta(double x, double a, double b)
    {
        if (x is <= 0 or >= 1)
        {
            return x <= 0 ? 0 : 1;
        }

        if (x > (a + 1) / (a + b + 2))
        {
            return 1 - IncompleteBeta(1 - x, b, a);
        }

        double front = Math.Exp(
            LogGamma(a + b) - LogGamma(a) - LogGamma(b) + (a * Math.Log(x)) + (b * Math.Log(1 - x))
        );
        return front / a * BetaFraction(x, a, b);
    }

    private static double BetaFraction(double x, double a, double b)
    {
        double c = 1;
        double d = 1 / NotZero(1 - ((a + b) * x / (a + 1)));
        double value = d;
        for (int m = 1; m < MostTerms; m++)
        {
            double even = m * (b - m) * x / ((a + (2 * m) - 1) * (a + (2 * m)));
            d = 1 / NotZero(1 + (even * d));
            c = NotZero(1 + (even / c));
            value *= d * c;
            double odd = -(a + m) * (a + b + m) * x / ((a + (2 * m)) * (a + (2 * m) + 1));
            d = 1 / NotZero(1 + (odd * d));
            c = NotZero(1 + (odd / c));
            value *= d * c;
            if (Math.Abs((d * c) - 1) < Precision)
            {
                break;
            }
        }

        return value;
    }

    // erf(x) = 2 x exp(-x2) / sqrt(pi) x sum of (2 x2)^n / (1 3 5 ... (2n + 1)); all terms above 0.
    private static double ErrorSeries(double x)
    {
        double term = 1;
        double sum = 1;
        for (int n = 1; n < MostTerms && term > Precision * sum; n++)
        {
            term *= 2 * x * x / ((2 * n) + 1);
            sum += term;
        }

        return 2 * x * Math.Exp(-x * x) / Math.Sqrt(Math.PI) * sum;
    }

    // erfc(x) = exp(-x2) / sqrt(pi) / (x + (1/2) / (x + 1 / (x + (3/2) / ...))), from far down up.
    private static double ErrorFraction(double x)
    {
        const int Depth = 200;
        double value = x;
        for (int n = Depth; n > 0; n--)
        {
            value = x + (n / 2.0 / value);
        }

        return Math.Exp(-x * x) / Math.Sqrt(Math.PI) / value;
    }

    private static double NotZero(double value) => Math.Abs(value) < Tiny ? Tiny : value;
}
