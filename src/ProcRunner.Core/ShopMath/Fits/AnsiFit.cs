using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>
/// Force fits FN1 to FN5 and locational fits LN2 and LN3 of ANSI B4.1, over the sizes that could be read in print:
/// Machinery's Handbook, 27th edition p. 663 Table 11, and 31st edition pp. 658 to 660. Basic hole: its smallest size is the
/// nominal one.
/// </summary>
/// <param name="Over">The size is over this.</param>
/// <param name="UpTo">Up to and including this.</param>
/// <param name="Hole">Limits of the hole.</param>
/// <param name="Shaft">Limits of the shaft or part.</param>
public sealed record AnsiFit(Exact Over, Exact UpTo, SizeLimits Hole, SizeLimits Shaft)
{
    private static readonly string[] Names = ["FN1", "FN2", "FN3", "FN4", "FN5", "LN2", "LN3"];

    // Thousandths of an inch: upper limit of the hole, lower and upper limit of the shaft.
    private static readonly (
        string Class,
        decimal Over,
        decimal UpTo,
        decimal Hole,
        decimal Low,
        decimal High
    )[] Rows =
    [
        ("FN1", 0.40m, 0.56m, 0.4m, 0.5m, 0.8m),
        ("FN1", 0.56m, 0.71m, 0.4m, 0.6m, 0.9m),
        ("FN1", 0.71m, 0.95m, 0.5m, 0.7m, 1.1m),
        ("FN1", 0.95m, 1.19m, 0.5m, 0.8m, 1.2m),
        ("FN1", 1.19m, 1.58m, 0.6m, 0.9m, 1.3m),
        ("FN1", 1.58m, 1.97m, 0.6m, 1.0m, 1.4m),
        ("FN1", 1.97m, 2.56m, 0.7m, 1.3m, 1.8m),
        ("FN2", 0.40m, 0.56m, 0.7m, 1.2m, 1.6m),
        ("FN2", 0.56m, 0.71m, 0.7m, 1.2m, 1.6m),
        ("FN2", 0.71m, 0.95m, 0.8m, 1.4m, 1.9m),
        ("FN2", 0.95m, 1.19m, 0.8m, 1.4m, 1.9m),
        ("FN2", 1.19m, 1.58m, 1.0m, 1.8m, 2.4m),
        ("FN2", 1.58m, 1.97m, 1.0m, 1.8m, 2.4m),
        ("FN2", 1.97m, 2.56m, 1.2m, 2.0m, 2.7m),
        ("FN3", 0.95m, 1.19m, 0.8m, 1.6m, 2.1m),
        ("FN3", 1.19m, 1.58m, 1.0m, 2.0m, 2.6m),
        ("FN3", 1.58m, 1.97m, 1.0m, 2.2m, 2.8m),
        ("FN3", 1.97m, 2.56m, 1.2m, 2.5m, 3.2m),
        ("FN4", 0.40m, 0.56m, 0.7m, 1.4m, 1.8m),
        ("FN4", 0.56m, 0.71m, 0.7m, 1.4m, 1.8m),
        ("FN4", 0.71m, 0.95m, 0.8m, 1.6m, 2.1m),
        ("FN4", 0.95m, 1.19m, 0.8m, 1.8m, 2.3m),
        ("FN4", 1.19m, 1.58m, 1.0m, 2.5m, 3.1m),
        ("FN4", 1.58m, 1.97m, 1.0m, 2.8m, 3.4m),
        ("FN4", 1.97m, 2.56m, 1.2m, 3.5m, 4.2m),
        ("FN5", 0.40m, 0.56m, 1.0m, 1.6m, 2.3m),
        ("FN5", 0.56m, 0.71m, 1.0m, 1.8m, 2.5m),
        ("FN5", 0.71m, 0.95m, 1.2m, 2.2m, 3.0m),
        ("FN5", 0.95m, 1.19m, 1.2m, 2.5m, 3.3m),
        ("FN5", 1.19m, 1.58m, 1.6m, 3.0m, 4.0m),
        ("FN5", 1.58m, 1.97m, 1.6m, 4.0m, 5.0m),
        ("FN5", 1.97m, 2.56m, 1.8m, 5.0m, 6.2m),
        ("LN2", 1.19m, 1.97m, 1.0m, 1.0m, 1.6m),
        ("LN3", 1.19m, 1.97m, 1.0m, 1.4m, 2.0m),
    ];

    /// <summary>The classes of fits: FN1 to FN5, LN2, LN3.</summary>
    public static IReadOnlyList<string> Classes => Names;

    /// <summary>The range of the fit.</summary>
    public FitRange Range =>
        new(Fit.LeastInterference(Hole.Upper, Shaft.Lower), Fit.MostInterference(Hole.Lower, Shaft.Upper));

    /// <summary>The fit of a class at a size. A size outside the sizes of that class in the table is a fault.</summary>
    /// <param name="nominal">FN1, FN2, FN4, FN5: over 0.40 up to 2.56 in; FN3 over 0.95; LN2, LN3: over 1.19 up to 1.97 in.</param>
    /// <param name="class">One of <see cref="Classes"/>.</param>
    public static ShopResult<AnsiFit> Find(Exact nominal, string @class)
    {
        Rational inches = nominal.In(Units.Inch);
        (string, decimal Over, decimal UpTo, decimal Hole, decimal Low, decimal High)[] rows =
        [
            .. Rows.Where(row => row.Class == @class),
        ];
        if (rows.Length == 0)
        {
            return new ShopFault("class", @class, "the table has " + string.Join(", ", Names));
        }

        foreach ((_, decimal over, decimal upTo, decimal hole, decimal low, decimal high) in rows)
        {
            if (inches > Rational.FromDecimal(over) && inches <= Rational.FromDecimal(upTo))
            {
                return new AnsiFit(
                    Inches(over),
                    Inches(upTo),
                    new SizeLimits(nominal, Thou(0), Thou(hole)),
                    new SizeLimits(nominal, Thou(low), Thou(high))
                );
            }
        }

        return new ShopFault(
            "nominal",
            Allowed.Show(nominal),
            FormattableString.Invariant(
                $"the table of {@class} holds sizes over {rows[0].Over} up to and including {rows[^1].UpTo} in"
            )
        );
    }

    private static Exact Inches(decimal value) => Exact.Of(new Quantity(value, Units.Inch));

    private static Exact Thou(decimal value) => Exact.Of(new Quantity(value, Units.Thou));
}
