using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>
/// Limit deviations of holes H and of shafts h, k, n, p, r and s, for sizes up to 120 mm (ISO 286-1:2010, Tables 1 and 5): how far
/// the smallest and largest size lie from the nominal.
/// </summary>
public static class IsoDeviation
{
    // Lower deviations in micrometres: k (IT4 to IT7), n, p, r, s. The steps of r and s are finer than those of the tolerances.
    private static readonly (int UpToMillimetres, int K, int N, int P, int R, int S)[] Steps =
    [
        (3, 0, 4, 6, 10, 14),
        (6, 1, 8, 12, 15, 19),
        (10, 1, 10, 15, 19, 23),
        (18, 1, 12, 18, 23, 28),
        (30, 2, 15, 22, 28, 35),
        (50, 2, 17, 26, 34, 43),
        (65, 2, 20, 32, 41, 53),
        (80, 2, 20, 32, 43, 59),
        (100, 3, 23, 37, 51, 71),
        (120, 3, 23, 37, 54, 79),
    ];

    /// <summary>The classes of holes: H4 to H11.</summary>
    public static IReadOnlyList<string> Holes { get; } = Classes(['H']);

    /// <summary>The classes of shafts: h, k, n, p, r and s, each with grades 4 to 11.</summary>
    public static IReadOnlyList<string> Shafts { get; } = Classes(['h', 'k', 'n', 'p', 'r', 's']);

    /// <summary>The limits of a class at a size: lower deviation from the table, upper = lower + tolerance. What the tables don't hold is a fault.</summary>
    /// <param name="nominal">Over 0 up to and including 120 mm.</param>
    /// <param name="class">One of <see cref="Holes"/> or <see cref="Shafts"/>, as in <c>p6</c>.</param>
    public static ShopResult<SizeLimits> Limits(Exact nominal, string @class)
    {
        if (!Holes.Contains(@class) && !Shafts.Contains(@class))
        {
            return new ShopFault("class", @class, "the table has " + string.Join(", ", Holes.Concat(Shafts)));
        }

        int grade = int.Parse(@class.AsSpan(1), System.Globalization.CultureInfo.InvariantCulture);
        return SizeStep
            .Find(nominal, [.. Steps.Select(step => step.UpToMillimetres)])
            .Then(step =>
                IsoTolerance
                    .Micrometres(nominal, grade)
                    .Then<SizeLimits>(width =>
                    {
                        int lower = @class[0] == 'h' ? -width : Lower(@class[0], grade, Steps[step]);
                        return new SizeLimits(nominal, Micrometres(lower), Micrometres(lower + width));
                    })
            );
    }

    // The deviation of k is 0 for grades coarser than IT7 (the standard's second column of k).
    private static int Lower(char letter, int grade, (int UpTo, int K, int N, int P, int R, int S) step) =>
        letter switch
        {
            'k' => grade <= 7 ? step.K : 0,
            'n' => step.N,
            'p' => step.P,
            'r' => step.R,
            's' => step.S,
            _ => 0,
        };

    private static Exact Micrometres(int value) => Exact.Of(new Quantity(value, Units.Micrometre));

    private static List<string> Classes(IEnumerable<char> letters) =>
        [
            .. letters.SelectMany(letter =>
                Enumerable
                    .Range(IsoTolerance.FinestGrade, IsoTolerance.CoarsestGrade - IsoTolerance.FinestGrade + 1)
                    .Select(grade => FormattableString.Invariant($"{letter}{grade}"))
            ),
        ];
}
