using FsCheck.Xunit;
using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Springs;

public class ShimChoiceTests
{
    // Thicknesses as sold, 0.015, 0.030, 0.060 in, and no more than 0.060 in of plain shims:
    // http://www.mustangandfords.com/how-to/chassis-suspension/24453-valvespring-installed-height/
    private static readonly Exact[] Drawer = [Known.Of("0.015 in"), Known.Of("0.030 in"), Known.Of("0.060 in")];
    private static readonly Exact Limit = Known.Of("0.060 in");

    [Theory]
    [InlineData("1.745 in", "0.030 0.015", "1.700 in")]
    [InlineData("1.760 in", "0.060", "1.700 in")]
    // Found 1.762 for 1.700: 0.060 leaves 1.702.
    [InlineData("1.762 in", "0.060", "1.702 in")]
    [InlineData("1.702 in", "", "1.702 in")]
    [InlineData("1.698 in", "", "1.698 in")]
    public void The_best_stack(string measured, string shims, string height)
    {
        ShimChoice choice = Known.Value(Find(measured, "0.005 in"));

        Assert.Equal(height, InInches(choice.Best!.Height, 3));
        Assert.Equal(
            shims,
            string.Join(
                " ",
                choice.Best.Shims.Select(one => InInches(one, 3).Replace(" in", "", StringComparison.Ordinal))
            )
        );
        Assert.Equal(Known.Of(measured), choice.Best.Height + choice.Best.Thickness);
    }

    [Theory]
    // Needs 0.075, and 0.078 for a height found 1.778: over the limit.
    [InlineData("1.775 in", "over the stack limit")]
    [InlineData("1.778 in", "over the stack limit")]
    [InlineData("1.708 in", "comes within")]
    [InlineData("1.690 in", "too small already")]
    public void None_with_the_reason(string measured, string why)
    {
        ShimChoice choice = Known.Value(Find(measured, "0.005 in"));

        Assert.Null(choice.Best);
        Assert.Empty(choice.All);
        Assert.Contains(why, choice.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_stack_that_fits_is_listed_the_best_first()
    {
        ShimChoice choice = Known.Value(Find("1.760 in", "0.001 in"));

        Assert.Equal([1, 2, 3, 4], choice.All.Select(stack => stack.Shims.Count));
        WorkBench.Gives(
            "spring-shims",
            "measured=1.760 in; wanted=1.700 in; tolerance=0.001 in; drawer=0.015 0.030 0.060 in; stack-limit=0.060 in",
            "shims=0.060 in; others that fit=0.030 in + 0.030 in or 0.030 in + 0.015 in + 0.015 in or 0.015 in + 0.015 in + 0.015 in + 0.015 in"
        );
    }

    [Fact]
    public void Of_two_as_near_the_one_with_fewer_shims_then_the_higher_spring_is_best()
    {
        Exact[] drawer = [Known.Of("1 mm"), Known.Of("2 mm"), Known.Of("3 mm")];

        ShimChoice near = Known.Value(
            ShimChoice.Find(Known.Of("42.5 mm"), Known.Of("40 mm"), Known.Of("1 mm"), drawer, Known.Of("5 mm"))
        );

        Assert.Equal([Known.Of("2 mm")], near.Best!.Shims);
    }

    [Theory]
    [InlineData("drawer=0 mm", "drawer")]
    [InlineData("drawer=1 -1 mm", "drawer")]
    [InlineData("drawer=0.0001 mm", "drawer")]
    [InlineData("drawer=1 mm; tolerance=-1 mm", "tolerance")]
    [InlineData("drawer=1 mm; stack-limit=-1 mm", "stack-limit")]
    [InlineData("drawer=1 mm; wanted=0 mm", "wanted")]
    [InlineData("drawer=1 mm; measured=0 mm", "measured")]
    public void A_drawer_or_height_that_is_none_is_refused(string given, string argument)
    {
        string[] usual = ["measured=45 mm", "wanted=40 mm", "tolerance=0.1 mm", "stack-limit=20 mm"];
        IEnumerable<string> others = usual.Where(one =>
            !given.Contains(one.Split('=')[0] + "=", StringComparison.Ordinal)
        );

        Assert.Equal(argument, WorkBench.Fault("spring-shims", string.Join("; ", others.Append(given))).Argument);
    }

    // Brute force: counts of each of three thicknesses, all of them tried.
    [Property(MaxTest = 200)]
    public void The_choice_is_that_of_brute_force(byte need, byte tolerance, byte a, byte b, byte c, byte limit)
    {
        int[] drawer = [.. new[] { 5 + (a % 20), 5 + (b % 20), 5 + (c % 20) }.Distinct()];
        int most = limit % 60;
        int slack = tolerance % 8;
        int wanted = need % 80;
        List<int[]> fitting =
        [
            .. Counts(drawer.Length, 12)
                .Where(counts => Total(counts, drawer) <= most && Math.Abs(wanted - Total(counts, drawer)) <= slack),
        ];

        ShimChoice choice = Known.Value(
            ShimChoice.Find(
                Known.Millimetres(1000 + wanted),
                Known.Millimetres(1000),
                Known.Millimetres(slack),
                [.. drawer.Select(one => Known.Millimetres(one))],
                Known.Millimetres(most)
            )
        );

        Assert.Equal(fitting.Count, choice.All.Count);
        Assert.Equal(fitting.Count == 0, choice.Best is null);
        Assert.Equal(fitting.Count == 0, choice.Why.Length > 0);
        if (choice.Best is { } best)
        {
            int nearest = fitting.Min(counts => Math.Abs(wanted - Total(counts, drawer)));
            int fewest = fitting
                .Where(counts => Math.Abs(wanted - Total(counts, drawer)) == nearest)
                .Min(counts => counts.Sum());
            Assert.Equal(Known.Millimetres(nearest).Value, (best.Height - Known.Millimetres(1000)).Value.Abs());
            Assert.Equal(fewest, best.Shims.Count);
        }
    }

    private static IEnumerable<int[]> Counts(int kinds, int most) =>
        kinds == 0
            ?
            [
                [],
            ]
            : Counts(kinds - 1, most)
                .SelectMany(rest => Enumerable.Range(0, most + 1).Select(count => (int[])[.. rest, count]));

    private static int Total(int[] counts, int[] drawer) => counts.Zip(drawer, (count, one) => count * one).Sum();

    private static ShopResult<ShimChoice> Find(string measured, string tolerance) =>
        ShimChoice.Find(Known.Of(measured), Known.Of("1.700 in"), Known.Of(tolerance), Drawer, Limit);

    private static string InInches(Exact length, int places)
    {
        Assert.True(length.TryToQuantity(Units.Inch, places, Rounding.Nearest, out Quantity quantity));
        return quantity.ToString();
    }
}
