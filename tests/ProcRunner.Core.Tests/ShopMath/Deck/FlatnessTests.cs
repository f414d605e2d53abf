using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using MathNet.Numerics.LinearRegression;
using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Deck;

/// <summary>
/// Flatness. Known values are from an exhaustive search over all planes through 3 points and all pairs of edges, worked out
/// outside this program; that set always holds the optimum. Least squares also against MathNet.Numerics.
/// </summary>
public class FlatnessTests
{
    private static readonly double[] DeckHeights =
    [
        0,
        .012,
        .021,
        .015,
        .004,
        .006,
        .019,
        .031,
        .022,
        .009,
        .003,
        .010,
        .018,
        .016,
        .011,
    ];

    [Fact]
    public void A_saddle_of_four_points()
    {
        Flatness flat = Of(new(0, 0, .02), new(100, 0, -.02), new(100, 100, .02), new(0, 100, -.02));

        Assert.Equal(0.04, flat.LeastSquaresMillimetres, 12);
        Assert.Equal(0.04, flat.Zone.VerticalMillimetres, 12);
        Assert.Equal("2+2", flat.Zone.Contact);
        Assert.Equal(0, flat.Plane.SlopeAlong, 15);
        Assert.Equal(0, flat.Plane.SlopeAcross, 15);
        Assert.Equal(0, flat.Plane.HeightMillimetres, 15);
    }

    // The other criterion of the minimum zone: one point over the triangle of three. The plane below is that of the three corners.
    [Fact]
    public void A_point_over_a_triangle()
    {
        Flatness flat = Of(new(0, 0, .01), new(100, 0, .02), new(0, 100, .03), new(30, 30, .058), new(40, 10, .02));

        // At (30, 30) the corners' plane is 0.01 + 0.003 + 0.006 high; at (40, 10) 0.016.
        Assert.Equal(0.039, flat.Zone.VerticalMillimetres, 12);
        Assert.Equal("3+1", flat.Zone.Contact);
    }

    [Fact]
    public void A_grid_with_one_corner_up()
    {
        Flatness flat = Of(Grid(3, 3, 50, 50, (i, j) => i + j == 0 ? .009 : 0));

        Assert.Equal(-3e-5, flat.Plane.SlopeAlong, 12);
        Assert.Equal(-3e-5, flat.Plane.SlopeAcross, 12);
        Assert.Equal(0.004, flat.Plane.HeightMillimetres, 12);
        Assert.Equal(0.0075, flat.LeastSquaresMillimetres, 12);
        Assert.Equal(0.005, flat.HighestMillimetres, 12);
        Assert.Equal(-0.0025, flat.LowestMillimetres, 12);
        Assert.Equal(0.0022360680, flat.RmsMillimetres, 10);
        Assert.Equal(0.00675, flat.Zone.VerticalMillimetres, 12);
        Assert.Equal("2+2", flat.Zone.Contact);
        Assert.Equal(0.009, flat.RawRangeMillimetres, 12);
    }

    [Fact]
    public void An_arch_along_the_deck()
    {
        Flatness flat = Of(Grid(5, 3, 100, 60, (i, _) => 0.05 * (1 - Math.Pow((i - 2) / 2.0, 2))));

        Assert.Equal(0.05, flat.LeastSquaresMillimetres, 12);
        Assert.Equal(0, flat.Plane.SlopeAlong, 12);
        Assert.Equal(0, flat.Plane.SlopeAcross, 12);
        Assert.Equal(0.025, flat.Plane.HeightMillimetres, 12);
        Assert.Equal(0.05, flat.Zone.VerticalMillimetres, 12);
    }

    [Fact]
    public void A_deck_of_fifteen_readings()
    {
        Flatness flat = Of(Deck());

        Assert.Equal(1.4e-5, flat.Plane.SlopeAlong, 12);
        Assert.Equal(8.57142857e-6, flat.Plane.SlopeAcross, 13);
        Assert.Equal(0.00973333333, flat.Plane.HeightMillimetres, 11);
        Assert.Equal(0.0292, flat.LeastSquaresMillimetres, 12);
        Assert.Equal(0.017866667, flat.HighestMillimetres, 9);
        Assert.Equal(-0.011333333, flat.LowestMillimetres, 9);
        Assert.Equal(0.007786027, flat.RmsMillimetres, 9);
        Assert.Equal(0.0275, flat.Zone.VerticalMillimetres, 12);

        // A limit case of 3+1: the highest point lies above the line between two opposite corners, a third carries nothing.
        Assert.Equal("2+1", flat.Zone.Contact);
        Assert.Equal(0.031, flat.RawRangeMillimetres, 12);
    }

    [Fact]
    public void The_same_deck_set_up_askew()
    {
        SurfacePoint[] points =
        [
            .. Deck()
                .Select(one =>
                    one with
                    {
                        ZMillimetres =
                            one.ZMillimetres + (0.001 * one.XMillimetres) - (0.0005 * one.YMillimetres) + 1.5,
                    }
                ),
        ];
        Flatness flat = Of(points);

        Assert.Equal(0.001014, flat.Plane.SlopeAlong, 12);
        Assert.Equal(-0.000491428571, flat.Plane.SlopeAcross, 12);
        Assert.Equal(1.50973333, flat.Plane.HeightMillimetres, 8);
        Assert.Equal(0.0292, flat.LeastSquaresMillimetres, 11);
        Assert.Equal(0.029199981, flat.LeastSquaresNormalMillimetres, 9);
        Assert.Equal(0.0275, flat.Zone.VerticalMillimetres, 11);
        Assert.Equal(0.027499983, flat.Zone.NormalMillimetres, 9);
    }

    // Five points of http://www.eng-tips.com/viewthread.cfm?qid=393584; plane and flatness worked out outside this program.
    [Fact]
    public void Five_published_points()
    {
        Flatness flat = Of(
            new(11.5, 7, 1.1),
            new(18.5, 6.9, 1.03),
            new(4.5, 13, 1.02),
            new(25.5, 30, 1.03),
            new(11.5, 37.5, 1.02)
        );

        Assert.Equal(0.000281689544, flat.Plane.SlopeAlong, 12);
        Assert.Equal(-0.00125486366, flat.Plane.SlopeAcross, 11);
        Assert.Equal(1.05966367, flat.Plane.HeightMillimetres, 8);
        Assert.Equal(0.072097313, flat.LeastSquaresMillimetres, 9);
        Assert.Equal(0.072097254, flat.LeastSquaresNormalMillimetres, 9);
        Assert.Equal(0.067262295, flat.Zone.VerticalMillimetres, 9);
        Assert.Equal(0.067262058, flat.Zone.NormalMillimetres, 9);
        Assert.Equal("2+2", flat.Zone.Contact);
        Assert.Equal(0.080, flat.RawRangeMillimetres, 12);
    }

    // Readings at 0 to 500 mm: 0 18 30 34 22 5 um; slope 0.0117142857 um per mm.
    [Fact]
    public void A_line_of_six_readings()
    {
        Assert.True(
            Straightness
                .Of([0, 100, 200, 300, 400, 500], [0, .018, .030, .034, .022, .005])
                .TryGet(out Straightness? line, out _)
        );
        Assert.Equal(0.0117142857e-3, line.SlopeLeastSquares, 13);
        Assert.Equal(0.0313428571, line.LeastSquaresMillimetres, 10);
        Assert.Equal(0.031, line.MinimumZoneMillimetres, 12);
        Assert.Equal(0.031, line.EndPointMillimetres, 12);
    }

    // Least squares can exceed the range of the readings: 2.6667 against 2.
    [Fact]
    public void Least_squares_can_exceed_the_range_as_set_up()
    {
        double[] z = [1, 3, 3, 3, 1, 1, 1, 2, 3];
        Flatness flat = Of(Grid(3, 3, 1, 1, (i, j) => z[i + (3 * j)]));

        Assert.Equal(2.6667, flat.LeastSquaresMillimetres, 4);
        Assert.Equal(2, flat.RawRangeMillimetres, 12);
    }

    [Property(MaxTest = 60)]
    public Property The_minimum_zone_is_what_an_exhaustive_search_finds() =>
        Prop.ForAll(
            Random(4, 12),
            points =>
            {
                if (MinimumZone.Of(points).TryGet(out MinimumZone? zone, out _))
                {
                    Assert.Equal(Exhaustive(points), zone.VerticalMillimetres, 9);
                }
            }
        );

    // The least distance square to the planes lies at a plane through three points or along two edges, whatever way it leans; here
    // all of them are tried, also on parts as high as they are wide, which no deck is.
    [Property(MaxTest = 100)]
    public Property What_is_proved_of_the_normal_distance_is_so() =>
        Prop.ForAll(
            Random(4, 10),
            Gen.Elements(0.001, 0.5, 20, 200).ToArbitrary(),
            (points, taller) =>
            {
                SurfacePoint[] tall = [.. points.Select(one => one with { ZMillimetres = one.ZMillimetres * taller })];
                if (!MinimumZone.Of(tall).TryGet(out MinimumZone? zone, out _))
                {
                    return;
                }

                double least = LeastNormal(tall);
                Assert.InRange(least, zone.NormalAtLeastMillimetres - 1e-9, zone.NormalMillimetres + 1e-9);
            }
        );

    [Fact]
    public void On_a_deck_the_normal_distance_is_the_least_or_as_good()
    {
        MinimumZone five = Of(
            new(11.5, 7, 1.1),
            new(18.5, 6.9, 1.03),
            new(4.5, 13, 1.02),
            new(25.5, 30, 1.03),
            new(11.5, 37.5, 1.02)
        ).Zone;
        Assert.Equal(five.NormalMillimetres, five.NormalAtLeastMillimetres);
        Assert.Equal(0.067262058, five.NormalMillimetres, 9);

        // Three of its points lie in one line: a bound within a hundred-thousandth of a thousandth.
        MinimumZone deck = Of(Deck()).Zone;
        Assert.InRange(deck.NormalMillimetres - deck.NormalAtLeastMillimetres, 0, 1e-8);
    }

    [Property(MaxTest = 60)]
    public Property It_is_no_larger_than_least_squares_or_range_and_knows_no_tilt_or_order() =>
        Prop.ForAll(
            Random(4, 40),
            Gen.Choose(-50, 50).Zip(Gen.Choose(-50, 50)).Zip(Gen.Choose(1, 1_000_000)).ToArbitrary(),
            (points, one) =>
            {
                ((int along, int across), int seed) = one;
                if (!Flatness.Of(points).TryGet(out Flatness? flat, out _))
                {
                    return;
                }

                SurfacePoint[] tilted =
                [
                    .. points
                        .Select((point, at) => (point, Key: (at + 1L) * seed % 7919))
                        .OrderBy(pair => pair.Key)
                        .Select(pair => pair.point)
                        .Select(point =>
                            point with
                            {
                                ZMillimetres =
                                    point.ZMillimetres
                                    + (along * point.XMillimetres / 1000)
                                    + (across * point.YMillimetres / 1000)
                                    - 7,
                            }
                        ),
                ];
                double zone = flat.Zone.VerticalMillimetres;
                Assert.True(flat.Zone.IsExact);
                Assert.True(zone <= flat.LeastSquaresMillimetres + 1e-12);
                Assert.True(zone <= flat.RawRangeMillimetres + 1e-12);
                Assert.True(flat.Zone.NormalMillimetres <= zone);
                Assert.Equal(zone, Of(tilted).Zone.VerticalMillimetres, 10);
                Assert.Equal(flat.LeastSquaresMillimetres, Of(tilted).LeastSquaresMillimetres, 10);
            }
        );

    [Property(MaxTest = 60)]
    public Property Least_squares_is_the_plane_of_MathNet() =>
        Prop.ForAll(
            Random(6, 40),
            points =>
            {
                if (!SurfacePlane.LeastSquares(points).TryGet(out SurfacePlane plane, out _))
                {
                    return;
                }

                double[] referee = MultipleRegression.QR(
                    [.. points.Select(one => new[] { one.XMillimetres, one.YMillimetres })],
                    [.. points.Select(one => one.ZMillimetres)],
                    intercept: true
                );
                Assert.Equal(referee[0], plane.HeightMillimetres, 7);
                Assert.Equal(referee[1], plane.SlopeAlong, 8);
                Assert.Equal(referee[2], plane.SlopeAcross, 8);
            }
        );

    [Property]
    public Property The_slope_of_a_line_is_that_of_MathNet() =>
        Prop.ForAll(
            Gen.Choose(-500, 500).ArrayOf(30).Where(all => all.Length > 1).ToArbitrary(),
            heights =>
            {
                double[] x = [.. heights.Select((_, i) => i * 12.5)];
                double[] z = [.. heights.Select(one => one / 1000.0)];
                Assert.True(Straightness.Of(x, z).TryGet(out Straightness? line, out _));
                (double height, double slope) = MathNet.Numerics.Fit.Line(x, z);
                double[] above = [.. x.Select((at, i) => z[i] - height - (slope * at))];
                Assert.Equal(slope, line.SlopeLeastSquares, 12);
                Assert.Equal(above.Max() - above.Min(), line.LeastSquaresMillimetres, 11);
                Assert.True(line.MinimumZoneMillimetres <= line.LeastSquaresMillimetres + 1e-12);
                Assert.True(line.MinimumZoneMillimetres <= line.EndPointMillimetres + 1e-12);
            }
        );

    // Turned as a whole, by a rotation of space, the distance square to the planes stays.
    [Fact]
    public void The_normal_distance_does_not_depend_on_how_the_part_lies()
    {
        (double cos, double sin) = (Math.Cos(0.3), Math.Sin(0.3));
        SurfacePoint[] turned =
        [
            .. Deck()
                .Select(one => new SurfacePoint(
                    (one.XMillimetres * cos) - (one.ZMillimetres * sin),
                    one.YMillimetres,
                    (one.XMillimetres * sin) + (one.ZMillimetres * cos)
                )),
        ];

        Assert.Equal(Of(Deck()).Zone.NormalMillimetres, Of(turned).Zone.NormalMillimetres, 9);
    }

    [Fact]
    public void A_grid_of_many_readings_ends_and_is_as_flat_as_it_was_made()
    {
        // A dome sampled at 10,000 places, tied in rows and columns: its zone is its height, at both ends of the grid.
        Flatness flat = Of(Grid(101, 101, 4, 2, (i, j) => 0.02 * (1 - Math.Pow((i - 50) / 50.0, 2)) + (0 * j)));

        Assert.Equal(0.02, flat.Zone.VerticalMillimetres, 11);
    }

    [Theory]
    [InlineData("flatness", "x=0 1 mm; y=0 1 mm; z=0 1 mm", "x")]
    [InlineData("flatness", "x=0 1 2 mm; y=0 1 2 mm; z=0 1 0 mm", "x and y")]
    [InlineData("flatness", "x=0 1 2 mm; y=0 1 5 mm; z=0 1 0 1 mm", "z")]
    [InlineData("straightness", "x=0 1 1 mm; y=0 1 2 um", "x")]
    [InlineData("straightness", "x=0 1 2 mm; y=0 1 um", "y")]
    public void Too_few_or_lined_up_points_are_refused(string function, string given, string argument) =>
        Assert.Equal(argument, WorkBench.Fault(function, given).Argument);

    private static Flatness Of(params SurfacePoint[] points)
    {
        Assert.True(Flatness.Of(points).TryGet(out Flatness? flat, out ShopFault? fault), fault?.ToString());
        return flat;
    }

    private static SurfacePoint[] Deck() => Grid(5, 3, 100, 70, (i, j) => DeckHeights[i + (5 * j)]);

    private static SurfacePoint[] Grid(int along, int across, double dx, double dy, Func<int, int, double> height) =>
        [
            .. Enumerable
                .Range(0, along * across)
                .Select(at => (I: at % along, J: at / along))
                .Select(at => new SurfacePoint(at.I * dx, at.J * dy, height(at.I, at.J))),
        ];

    // Whole numbers of a coarse grid, so that ties, points in one line and equal heights come up.
    private static Arbitrary<SurfacePoint[]> Random(int fewest, int most) =>
        Gen.Choose(0, 9)
            .Zip(Gen.Choose(0, 6))
            .Zip(Gen.Choose(0, 50))
            .Select(one => new SurfacePoint(one.Item1.Item1, one.Item1.Item2, one.Item2 / 1000.0))
            .ArrayOf(most)
            .Where(all => all.Length >= fewest)
            .ToArbitrary();

    private static double Exhaustive(SurfacePoint[] points)
    {
        double least = double.PositiveInfinity;
        for (int i = 0; i < points.Length; i++)
        {
            for (int j = 0; j < points.Length; j++)
            {
                for (int k = 0; k < points.Length; k++)
                {
                    least = Math.Min(least, Zone(points, points[i], points[j], points[k], points[i]));
                    for (int l = 0; l < points.Length; l++)
                    {
                        least = Math.Min(least, Zone(points, points[i], points[j], points[k], points[l]));
                    }
                }
            }
        }

        return least;
    }

    private static double LeastNormal(SurfacePoint[] points)
    {
        (double X, double Y, double Z)[] all =
        [
            .. points.Select(one => (one.XMillimetres, one.YMillimetres, one.ZMillimetres)),
        ];
        (double X, double Y, double Z)[] edges =
        [
            .. from i in Enumerable.Range(0, all.Length)
            from j in Enumerable.Range(0, i)
            select (all[i].X - all[j].X, all[i].Y - all[j].Y, all[i].Z - all[j].Z),
        ];
        double least = double.PositiveInfinity;
        for (int i = 0; i < edges.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                (var a, var b) = (edges[i], edges[j]);
                double x = (a.Y * b.Z) - (a.Z * b.Y);
                double y = (a.Z * b.X) - (a.X * b.Z);
                double z = (a.X * b.Y) - (a.Y * b.X);
                double length = Math.Sqrt((x * x) + (y * y) + (z * z));
                if (length > 1e-9)
                {
                    double[] along = [.. all.Select(one => ((one.X * x) + (one.Y * y) + (one.Z * z)) / length)];
                    least = Math.Min(least, along.Max() - along.Min());
                }
            }
        }

        return least;
    }

    // Planes whose slopes make i and j equally high, and k and l; with l = i the plane goes through i, j and k.
    private static double Zone(SurfacePoint[] points, SurfacePoint i, SurfacePoint j, SurfacePoint k, SurfacePoint l)
    {
        (double x1, double y1, double z1) = (
            j.XMillimetres - i.XMillimetres,
            j.YMillimetres - i.YMillimetres,
            j.ZMillimetres - i.ZMillimetres
        );
        (double x2, double y2, double z2) = (
            l.XMillimetres - k.XMillimetres,
            l.YMillimetres - k.YMillimetres,
            l.ZMillimetres - k.ZMillimetres
        );
        double determinant = (x1 * y2) - (x2 * y1);
        if (determinant == 0)
        {
            return double.PositiveInfinity;
        }

        SurfacePlane plane = new(((z1 * y2) - (z2 * y1)) / determinant, ((x1 * z2) - (x2 * z1)) / determinant, 0);
        return points.Max(plane.Above) - points.Min(plane.Above);
    }
}
