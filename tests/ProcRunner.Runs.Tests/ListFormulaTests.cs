namespace ProcRunner.Runs.Tests;

/// <summary>Calculations of the shop in a procedure, over the readings of several places and positions.</summary>
public sealed class ListFormulaTests
{
    private const string Readings = """
        bore: {of: position, measured-in: length, places: [top, middle, bottom], why: it guides}
        depth: {of: position, measured-in: length, why: it matters}
        """;

    // 0.3131 + 0.3132 + 0.3136 over 3; by Pythagoras on the deviations -0.2, -0.1, 0.3 thou: root of 0.14 / 2 is 0.264575.
    [Fact]
    public void The_readings_at_the_places_are_a_list_in_their_order()
    {
        Rig rig = new(
            Work.Procedure(
                Readings,
                """
                - measure: bore
                  window: none
                  works-out:
                    middle size: {is: "statistics(readings: [bore.each])", window: none}
                    scatter: {is: "statistics.standard-deviation(readings: [bore.each])", window: none}
                    belly: {is: "straightness(x: '0 in', '1 in', '2 in', y: [bore.each])", window: none}
                """
            ),
            Work.Head("")
        );

        IReadOnlyList<WorkedValue> worked = rig.Read("bore 1I", "0.3131 0.3132 0.3136").Worked;

        Assert.True(worked[0].Value.SameAs(RigShop.Q("0.3133 in")));
        Assert.Equal("0.0003 in", Rounded(worked[1]));

        // Order matters here: the middle lies 0.15 thou below the line from top to bottom. Least distance of parallel lines.
        Assert.Equal("0.0002 in", Rounded(worked[2]));
    }

    [Fact]
    public void The_values_of_all_positions_are_a_list_once_every_one_is_there()
    {
        Rig rig = new(
            Work.Procedure(
                Readings,
                """
                - measure: bore
                  window: none
                - measure: depth
                  window: none
                  works-out:
                    middle of all: {is: "statistics(readings: [all.bore.each])", window: none}
                    middle of its kind: {is: "statistics(readings: [kind.bore.each])", window: none}
                """
            ),
            Work.Head("")
        );
        rig.Enter("bore 1I", "0.3140 0.3130 0.3130");
        rig.Enter("bore 1E", "0.3150 0.3130 0.3130");
        rig.Enter("bore 2I", "0.3144 0.3130 0.3130");

        Assert.Contains("all.bore.each", rig.EnterRefused("depth 1I", "0.050").Why, StringComparison.Ordinal);

        rig.Enter("bore 2E", "0.3158 0.3130 0.3130");
        IReadOnlyList<WorkedValue> worked = rig.Read("depth 1I", "0.050").Worked;

        // The largest of its places counts for each: (0.3140 + 0.3150 + 0.3144 + 0.3158) / 4, (0.3140 + 0.3144) / 2.
        Assert.True(worked[0].Value.SameAs(RigShop.Q("0.3148 in")));
        Assert.True(worked[1].Value.SameAs(RigShop.Q("0.3142 in")));
    }

    // The cosine of 90 deg is none to divide by: the reading isn't taken, and the operator is told which value and why.
    [Fact]
    public void What_a_calculation_cannot_take_is_told_with_the_values_name()
    {
        Rig rig = new(
            Work.Procedure(
                "angle: {of: position, measured-in: deg, why: it seals}",
                """
                - measure: angle
                  window: none
                  works-out:
                    sunk: {is: "sink-from-face(removed: '0.10 mm', face-angle: [angle])", window: none}
                """
            ),
            Work.Head("")
        );

        Assert.Contains(
            "face-angle: 90 deg was read; it must lie between 0 and 90 deg",
            rig.EnterRefused("angle 1I", "90").Why,
            StringComparison.Ordinal
        );
    }

    private static string Rounded(WorkedValue worked) =>
        worked.Value.TryConvert(Quantities.Units.Inch, 4, Quantities.Rounding.Nearest, out Quantities.Quantity shown)
            ? shown.ToString()
            : "";
}
