using System.Globalization;
using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The table of flatness and straightness.</summary>
internal static class FlatnessWork
{
    private const string Family = "deck";
    private const string Exhaustive =
        "exhaustive search over all planes through 3 points and all pairs of edges, which always holds the optimum";

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "flatness",
            Family = Family,
            Summary = "how flat a surface is: minimum zone, least squares, and range as set up",
            Details =
                "Minimum zone: the least distance between two parallel planes with all readings between them, which is what a "
                + "flatness tolerance means; it has no tilt in it. Vertical is along the reading, normal square to the planes. "
                + "Least squares is never smaller. It says nothing about places that were not read.",
            Parameters =
            [
                new("x", new WorkTakes.Amounts(Units.Millimetre, 3), "places along"),
                new("y", new WorkTakes.Amounts(Units.Millimetre, 3), "places across, in the same order"),
                new("z", new WorkTakes.Amounts(Units.Millimetre, 3), "heights read there, in the same order"),
            ],
            Source = "ISO 12781-1:2011, minimum zone and least squares reference planes (from memory)",
            Gives =
            [
                .. WorkGives.Of(Dimension.OfLength, "minimum zone", "minimum zone normal"),
                .. WorkGives.Words("contact"),
                .. WorkGives.Of(Dimension.OfLength, "least squares", "least squares normal", "range as set up"),
            ],
            Examples =
            [
                new(
                    "x=0 100 100 0 mm; y=0 0 100 100 mm; z=0.02 -0.02 0.02 -0.02 mm",
                    "minimum zone=0.04 mm; least squares=0.04 mm; contact=2+2",
                    Exhaustive
                ),
                new(
                    "x=11.5 18.5 4.5 25.5 11.5 mm; y=7 6.9 13 30 37.5 mm; z=1.1 1.03 1.02 1.03 1.02 mm",
                    "minimum zone=0.067262295 mm; minimum zone normal=0.067262058 mm; least squares=0.072097313 mm; least squares normal=0.072097254 mm; range as set up=0.080 mm; contact=2+2",
                    "points of a public engineering forum's thread on flatness; " + Exhaustive
                ),
                new(
                    "x=0 4 4 0 in; y=0 0 4 4 in; z=0.001 -0.001 0.001 -0.001 in",
                    "minimum zone=0.002 in",
                    "two crossing edges 0.002 apart"
                ),
            ],
            StemsFrom = [new("points", "x and y")],
            Work = all =>
                PointsOf(all)
                    .Then(Flatness.Of)
                    .Then(flat =>
                        SeatWork
                            .Worked(all)
                            .And(
                                "minimum zone",
                                "least distance of two parallel planes around all points, along z",
                                flat.Zone.VerticalMillimetres
                            )
                            .And("minimum zone normal", Normal(flat.Zone), flat.Zone.NormalMillimetres)
                            .Say(
                                "contact",
                                "points that hold the two planes apart",
                                !flat.Zone.IsExact ? "not found: the minimum zone is an upper bound"
                                    : flat.Zone.TouchingAbove.Count > 0 ? flat.Zone.Contact
                                    : "all points in one plane"
                            )
                            .And(
                                "least squares",
                                "highest less lowest distance from the least-squares plane, along z",
                                flat.LeastSquaresMillimetres
                            )
                            .And(
                                "least squares normal",
                                "the same square to that plane",
                                flat.LeastSquaresNormalMillimetres
                            )
                            .And("range as set up", "highest less lowest of {z}", flat.RawRangeMillimetres)
                            .Done()
                    ),
        },
        new()
        {
            Name = "straightness",
            Family = Family,
            Summary = "how straight a line of readings is",
            Details =
                "Along, across and on both diagonals of a deck. A straightedge with feelers gives a bound, not a value: the gap is "
                + "at least the leaf that goes through and less than the next.",
            Parameters =
            [
                new("x", new WorkTakes.Amounts(Units.Millimetre, 2), "places along the line"),
                new("y", new WorkTakes.Amounts(Units.Micrometre, 2), "heights read there, in the same order"),
            ],
            Source = "ISO 12780-1, minimum zone and least squares reference lines (from memory)",
            Gives = WorkGives.Of(Dimension.OfLength, "minimum zone", "least squares", "end points"),
            Examples =
            [
                new(
                    "x=0 100 200 300 400 500 mm; y=0 18 30 34 22 5 um",
                    "minimum zone=0.0310 mm; least squares=0.0313428571 mm; end points=0.0310 mm",
                    "exhaustive search over all lines through 2 points"
                ),
                new(
                    "x=0 4 8 in; y=0 0.002 0 in",
                    "minimum zone=0.002 in; end points=0.002 in",
                    "the middle stands 0.002 up"
                ),
            ],
            Work = all =>
                Straightness
                    .Of(In(all, "x"), In(all, "y"))
                    .Then(line =>
                        SeatWork
                            .Worked(all)
                            .And(
                                "minimum zone",
                                "least distance of two parallel lines around all readings, along y",
                                line.MinimumZoneMillimetres
                            )
                            .And(
                                "least squares",
                                "highest less lowest distance from the least-squares line",
                                line.LeastSquaresMillimetres
                            )
                            .And(
                                "end points",
                                "highest less lowest distance from the line through both ends",
                                line.EndPointMillimetres
                            )
                            .Done()
                    ),
        },
    ];

    private static string Normal(MinimumZone zone) =>
        zone.NormalAtLeastMillimetres < zone.NormalMillimetres
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"the same square to the planes; no two planes are closer than {zone.NormalAtLeastMillimetres:G6} mm"
            )
            : "the same square to the planes; no two planes are closer";

    private static ShopResult<IReadOnlyList<SurfacePoint>> PointsOf(WorkArguments all)
    {
        (double[] x, double[] y, double[] z) = (In(all, "x"), In(all, "y"), In(all, "z"));
        foreach ((string name, double[] row) in new[] { ("y", y), ("z", z) })
        {
            if (row.Length != x.Length)
            {
                return new ShopFault(
                    name,
                    FormattableString.Invariant($"{row.Length} values"),
                    FormattableString.Invariant($"give one for each of the {x.Length} values of x")
                );
            }
        }

        return x.Select((along, i) => new SurfacePoint(along, y[i], z[i])).ToArray();
    }

    private static double[] In(WorkArguments all, string name) =>
        [.. all.Amounts(name).Select(one => one.In(Units.Millimetre).ToDouble())];
}
