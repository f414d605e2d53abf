using FsCheck.Xunit;
using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Fits;

public class FitTests
{
    [Theory]
    // TM 5-6115-400-35, Table 2.1: intake and exhaust inserts, standard and 0.005 oversize.
    [InlineData("1.6415 1.6425 1.6445 1.6455", "0.0020", "0.0040")]
    [InlineData("1.6465 1.6475 1.6495 1.6505", "0.0020", "0.0040")]
    [InlineData("1.6075 1.6085 1.6105 1.6110", "0.0020", "0.0035")]
    [InlineData("1.6125 1.6135 1.6155 1.6160", "0.0020", "0.0035")]
    // TM 9-6115-604-34, Table 1-4: insert, and guide in its hole.
    [InlineData("2.377 2.378 2.3805 2.3815", "0.0025", "0.0045")]
    [InlineData("0.8435 0.8445 0.8456 0.8461", "0.0011", "0.0026")]
    // TM 5-3810-295-34, Table 14-2: standard and 0.020 oversize.
    [InlineData("1.9995 2.0005 2.0025 2.0035", "0.0020", "0.0040")]
    [InlineData("2.0195 2.0205 2.0225 2.0235", "0.0020", "0.0040")]
    public void Inch_fits_as_printed(string limits, string least, string most) => Holds(limits, "in", least, most);

    [Theory]
    // Car makers' guide-in-head fits, printed 0.027 to 0.059.
    [InlineData("10.975 10.996 11.023 11.034", "0.027", "0.059")]
    [InlineData("9.475 9.496 9.523 9.534", "0.027", "0.059")]
    [InlineData("9.975 9.996 10.023 10.034", "0.027", "0.059")]
    // A maker's page prints 0.027 to 0.059 for these, which its own limits contradict: they give 0.045 to 0.074.
    [InlineData("9.960 9.978 10.023 10.034", "0.045", "0.074")]
    // Jindal, Machine Design, ch. 4: 50 H8/g7, hole +39/0, shaft -9/-34: clearance 0.009 to 0.073.
    [InlineData("50.000 50.039 49.966 49.991", "-0.073", "-0.009")]
    // 50 H8/f7, "Engineering fit" in a public encyclopaedia: clearance 0.025 to 0.089.
    [InlineData("50.000 50.039 49.950 49.975", "-0.089", "-0.025")]
    // Shaft 60 +0.030/+0.011 in hub 60 +0.019/0, limits of a public question on a press fit: it can be loose by 0.008.
    [InlineData("60.000 60.019 60.011 60.030", "-0.008", "0.030")]
    public void Metric_fits_as_printed(string limits, string least, string most) => Holds(limits, "mm", least, most);

    [Theory]
    [InlineData("60 60.019 60.011 60.030", FitKind.Transition)]
    [InlineData("60 60.019 60.019 60.030", FitKind.Interference)]
    [InlineData("60 60.019 59.950 60", FitKind.Clearance)]
    public void The_kind_follows_from_both_ends(string limits, FitKind kind) =>
        Assert.Equal(kind, Range(limits, "mm").Kind);

    [Theory]
    [InlineData("2 1 3 4", "hole smallest")]
    [InlineData("0 1 3 4", "hole smallest")]
    [InlineData("1 2 4 3", "part smallest")]
    [InlineData("1 2 -4 3", "part smallest")]
    public void Limits_the_wrong_way_round_are_refused(string limits, string argument)
    {
        Exact[] all = Sizes(limits, "mm");

        Assert.Equal(argument, Known.Fault(Fit.OfLimits(all[0], all[1], all[2], all[3])).Argument);
    }

    // A fit seen from the part is the same fit: mirrored limits give the mirrored range.
    [Property]
    public void Fits_are_symmetric(ushort a, ushort b, ushort c, ushort d)
    {
        Exact[] hole = [.. new[] { a, b }.Order().Select(one => Known.Millimetres(1 + one))];
        Exact[] part = [.. new[] { c, d }.Order().Select(one => Known.Millimetres(1 + one))];

        FitRange range = Known.Value(Fit.OfLimits(hole[0], hole[1], part[0], part[1]));
        FitRange swapped = Known.Value(Fit.OfLimits(part[0], part[1], hole[0], hole[1]));

        Assert.Equal(range.Least.Value, -swapped.Most.Value);
        Assert.Equal(range.Most.Value, -swapped.Least.Value);
        Assert.True(range.Least.CompareTo(range.Most) <= 0);
    }

    [Property]
    public void The_target_bore_gives_the_wanted_interference_back(ushort part, ushort interference)
    {
        Exact size = Known.Millimetres(1 + part + interference);
        Exact wanted = Known.Millimetres(interference);

        Exact bore = Known.Value(Fit.TargetBore(size, wanted));

        FitRange range = Known.Value(Fit.OfLimits(bore, bore, size, size));
        Assert.Equal(wanted, range.Least);
        Assert.Equal(wanted, range.Most);
    }

    [Theory]
    [InlineData("0 mm", "0.1 mm", "part")]
    [InlineData("38 mm", "-0.1 mm", "interference")]
    [InlineData("38 mm", "38 mm", "interference")]
    public void A_target_bore_that_is_none_is_refused(string part, string interference, string argument) =>
        Assert.Equal(argument, Known.Fault(Fit.TargetBore(Known.Of(part), Known.Of(interference))).Argument);

    // Bore targets for inserts +0.010, +0.020, +0.030 in over 1.7325 in with 0.003 in, as a tractor maker prints them, middle of
    // 1.739-1.740, 1.749-1.750, 1.759-1.760: the insert's size is worked back from the standard step of 0.010.
    [Theory]
    [InlineData("1.7390 in", "1.7425 in", "1.7395 in", "0.0005 in")]
    [InlineData("1.7395 in", "1.7425 in", "1.7395 in", "0 in")]
    [InlineData("1.7396 in", "1.7525 in", "1.7495 in", "0.0099 in")]
    [InlineData("1.7200 in", "1.7425 in", "1.7395 in", "0.0195 in")]
    public void The_next_oversize_is_the_smallest_that_the_bore_is_not_too_large_for(
        string bore,
        string part,
        string target,
        string cut
    )
    {
        Oversize? found = Known.Value(
            Fit.NextOversize(
                Known.Of(bore),
                Known.Of("0.003 in"),
                [Known.Of("1.7625 in"), Known.Of("1.7425 in"), Known.Of("1.7525 in")]
            )
        );

        Assert.Equal(new Oversize(Known.Of(part), Known.Of(target), Known.Of(cut)), found);
    }

    // The same page's bores: exhaust 1.739-1.740, 1.749-1.750, 1.759-1.760; intake 1.969-1.970, 1.979-1.980, 1.989-1.990 in. Each
    // step of insert of 0.010 asks for a bore 0.010 larger, from one end of its limits to the other.
    [Theory]
    [InlineData(1.739, 1.740, new[] { 1.749, 1.759 }, new[] { 1.750, 1.760 })]
    [InlineData(1.969, 1.970, new[] { 1.979, 1.989 }, new[] { 1.980, 1.990 })]
    public void Bores_for_oversize_inserts_follow_their_steps(double low, double high, double[] lows, double[] highs)
    {
        for (int step = 1; step <= 2; step++)
        {
            (double Printed, double From)[] ends = [(lows[step - 1], low), (highs[step - 1], high)];
            foreach ((double printed, double from) in ends)
            {
                // A part 0.003 larger than the first bore's end, and the same part a step or two larger.
                string part = FormattableString.Invariant($"{(decimal)from + 0.003m + (0.010m * step)} in");
                WorkBench.Gives(
                    "target-bore",
                    $"part={part}; interference=0.003 in",
                    FormattableString.Invariant($"bore={printed:0.000} in")
                );
            }
        }
    }

    [Fact]
    public void A_bore_past_the_largest_oversize_has_none()
    {
        Assert.Null(
            Known.Value(Fit.NextOversize(Known.Of("1.7600 in"), Known.Of("0.003 in"), [Known.Of("1.7625 in")]))
        );
        WorkBench.Gives(
            "next-oversize",
            "bore=1.7600 in; interference=0.003 in; standard=1.7325 in; oversizes=0.010 0.020 0.030 in",
            "part=none: made to measure"
        );
    }

    [Fact]
    public void A_bore_or_part_that_is_none_is_refused()
    {
        Exact three = Known.Of("0.003 in");

        Assert.Equal("bore", Known.Fault(Fit.NextOversize(Known.Of("0 in"), three, [])).Argument);
        Assert.Equal("part", Known.Fault(Fit.NextOversize(Known.Of("1 in"), three, [Known.Of("-1 in")])).Argument);
    }

    private static void Holds(string limits, string unit, string least, string most)
    {
        FitRange range = Range(limits, unit);

        Assert.Equal(Known.Of($"{least} {unit}"), range.Least);
        Assert.Equal(Known.Of($"{most} {unit}"), range.Most);
    }

    private static FitRange Range(string limits, string unit)
    {
        Exact[] all = Sizes(limits, unit);
        return Known.Value(Fit.OfLimits(all[0], all[1], all[2], all[3]));
    }

    private static Exact[] Sizes(string limits, string unit) =>
        [.. limits.Split(' ').Select(one => Known.Of($"{one} {unit}"))];
}
