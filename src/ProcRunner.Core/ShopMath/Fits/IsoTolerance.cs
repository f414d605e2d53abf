using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>Standard tolerances of ISO 286-1:2010, Table 1, for sizes up to 180 mm and grades IT4 to IT11.</summary>
public static class IsoTolerance
{
    /// <summary>The finest grade in the table.</summary>
    public const int FinestGrade = 4;

    /// <summary>The coarsest grade in the table.</summary>
    public const int CoarsestGrade = 11;

    // A step is "over the one before, up to and including this": 30 mm belongs to 18 to 30. Micrometres, IT4 first.
    private static readonly (int UpToMillimetres, int[] Micrometres)[] Steps =
    [
        (3, [3, 4, 6, 10, 14, 25, 40, 60]),
        (6, [4, 5, 8, 12, 18, 30, 48, 75]),
        (10, [4, 6, 9, 15, 22, 36, 58, 90]),
        (18, [5, 8, 11, 18, 27, 43, 70, 110]),
        (30, [6, 9, 13, 21, 33, 52, 84, 130]),
        (50, [7, 11, 16, 25, 39, 62, 100, 160]),
        (80, [8, 13, 19, 30, 46, 74, 120, 190]),
        (120, [10, 15, 22, 35, 54, 87, 140, 220]),
        (180, [12, 18, 25, 40, 63, 100, 160, 250]),
    ];

    /// <summary>The width of a tolerance, in micrometres. A size or grade that the table doesn't hold is a fault.</summary>
    /// <param name="nominal">The nominal size, over 0 up to and including 180 mm.</param>
    /// <param name="grade">4 to 11, as in IT7.</param>
    public static ShopResult<int> Micrometres(Exact nominal, int grade)
    {
        if (grade is < FinestGrade or > CoarsestGrade)
        {
            return new ShopFault("grade", FormattableString.Invariant($"IT{grade}"), "the table has IT4 to IT11");
        }

        return SizeStep
            .Find(nominal, [.. Steps.Select(step => step.UpToMillimetres)])
            .Then<int>(index => Steps[index].Micrometres[grade - FinestGrade]);
    }
}
