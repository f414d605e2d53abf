using ProcRunner.Formulas;

namespace ProcRunner.Runs.Tests;

/// <summary>
/// Sensitivity coefficients (JCGM 100:2008, 5.1.3: the partial derivatives) against derivatives by calculus, in base units: mm, deg and
/// what follows from them. The program takes a difference over a thousandth of the reading's unit, so bends show in the fourth digit.
/// </summary>
public sealed class SensitivityTests
{
    private const string Readings = """
        a: {of: position, measured-in: length, why: it matters}
        b: {of: position, measured-in: length, why: it matters}
        angle: {of: position, measured-in: deg, why: it seals}
        bore: {of: position, measured-in: length, places: [top, middle, bottom], why: it guides}
        """;

    private const double NearEnough = 1e-4;

    [Theory]
    // A sum hangs on each part by 1 or -1, whatever units they were typed in.
    [InlineData("[a] - [b]", "a", 1)]
    [InlineData("[a] - [b]", "b", -1)]
    // Twice a length is a length that hangs on it by 2.
    [InlineData("[a] + [a] - [b]", "a", 2)]
    // Of two, the larger counts alone: 25.4 mm against 20.
    [InlineData("max([a], [b])", "a", 1)]
    [InlineData("max([a], [b])", "b", 0)]
    // All places move together, though one is typed in inches and two in millimetres: the mean and each one by 1, what lies between them not at all.
    [InlineData("[bore.mean]", "bore", 1)]
    [InlineData("[bore.largest]", "bore", 1)]
    [InlineData("[bore.spread]", "bore", 0)]
    // What it doesn't name it doesn't hang on.
    [InlineData("[a] - [b]", "angle", 0)]
    // a/b, by calculus 1/b and -a/b²: a is 25.4 mm, b is 20.
    [InlineData("[a] / [b]", "a", 0.05)]
    [InlineData("[a] / [b]", "b", -0.0635)]
    // a b, by calculus b and a, in mm.
    [InlineData("[a] * [b]", "a", 20)]
    [InlineData("[a] * [b]", "b", 25.4)]
    // a/cos(angle) at 60 deg: 2, and a sin/cos² x pi/180 = 25.4 x 2 root 3 x pi/180 for each degree.
    [InlineData("sink-from-face(removed: [a], face-angle: [angle])", "a", 2)]
    [InlineData("sink-from-face(removed: [a], face-angle: [angle])", "angle", 1.5356804)]
    public void A_value_hangs_on_a_reading_by_its_derivative(string formula, string reading, double derivative)
    {
        Rig rig = Made(formula);

        double found = Of(rig, reading, 0)!.Value;

        Assert.Equal(derivative, found, NearEnough * Math.Max(1, Math.Abs(derivative)));
    }

    // The same by exact figures where the line is straight: no digit is lost to the difference.
    [Fact]
    public void Of_a_straight_line_it_is_exact()
    {
        Rig rig = Made("[a] - [b]");

        Assert.Equal(1, Of(rig, "a", 0)!.Value, 1e-15);
        Assert.Equal(-1, Of(rig, "b", 0)!.Value, 1e-15);
    }

    // 1/b at each position's own b: 20 mm at the first, 40 at the second.
    [Fact]
    public void Each_position_is_seen_with_its_own_readings()
    {
        Rig rig = Made("[a] / [b]");
        rig.Enter("bore 1E", "8.0 mm 8.0 mm 8.0 mm");
        rig.Enter("angle 1E", "45");
        rig.Enter("b 1E", "40 mm");
        rig.Enter("a 1E", "1 in");

        Assert.Equal(1 / 20.0, Of(rig, "a", 0)!.Value, 1e-12);
        Assert.Equal(1 / 40.0, Of(rig, "a", 1)!.Value, 1e-12);
    }

    [Fact]
    public void Without_the_reading_or_another_there_is_none()
    {
        Rig rig = Made("[a] - [b]");

        Assert.Null(Of(rig, "a", 1));
        rig.Enter("bore 1E", "8.0 mm 8.0 mm 8.0 mm");
        Assert.Null(Of(rig, "bore", 1));
        Assert.NotNull(Of(rig, "bore", 0));
    }

    // The cosine of 90 deg is none to divide by, and a thousandth of a degree leads past it.
    [Fact]
    public void Where_the_next_value_is_none_there_is_none()
    {
        Rig rig = Made("sink-from-face(removed: [a], face-angle: [angle])", "89.9995");

        Assert.NotNull(Of(rig, "a", 0));
        Assert.Null(Of(rig, "angle", 0));
    }

    // It only asks: the run is as it was.
    [Fact]
    public void Asking_changes_nothing()
    {
        Rig rig = Made("[a] * [b]");
        string before = StateDump.Of(rig.State);

        _ = Of(rig, "b", 0);

        Assert.Equal(before, StateDump.Of(rig.State));
    }

    // Everything read at 1I; the value is worked out from the last of it.
    private static Rig Made(string formula, string angle = "60")
    {
        Rig rig = new(
            Work.Procedure(
                Readings,
                $"""
                - measure: bore
                  window: none
                - measure: angle
                  window: none
                - measure: b
                  window: none
                - measure: a
                  window: none
                  works-out:
                    worked: {"{"}is: "{formula}", window: none{"}"}
                """
            ),
            Work.Head("")
        );
        rig.Enter("bore 1I", "0.3150 in 8.002 mm 8.010 mm");
        rig.Enter("angle 1I", angle);
        rig.Enter("b 1I", "20 mm");
        rig.Enter("a 1I", "1 in");
        return rig;
    }

    private static double? Of(Rig rig, string reading, int position)
    {
        Formula formula = rig.Plan.Steps.SelectMany(step => step.Taking?.WorksOut ?? []).Single().Formula;
        Assert.True(rig.Plan.TryCharacteristic(reading, out int characteristic));
        return Sensitivity.Of(rig.State, formula, position, characteristic);
    }
}
