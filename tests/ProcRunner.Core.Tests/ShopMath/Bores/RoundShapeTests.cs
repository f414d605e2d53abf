using FsCheck.Xunit;
using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Bores;

public class RoundShapeTests
{
    // Definitions are common practice, no source; worked by hand. The bore is tapered in one direction, out of round at the bottom.
    [Fact]
    public void Size_taper_and_out_of_round_come_from_the_readings()
    {
        RoundShape shape = Known.Value(
            RoundShape.Of([
                At("top", "along", 8.020m),
                At("top", "across", 8.021m),
                At("middle", "along", 8.012m),
                At("middle", "across", 8.013m),
                At("bottom", "along", 8.011m),
                At("bottom", "across", 8.018m),
            ])
        );

        Assert.Equal(Known.Of("8.021 mm"), shape.Largest);
        Assert.Equal(Known.Of("8.011 mm"), shape.Smallest);
        Assert.Equal(Known.Of("0.009 mm"), shape.Taper);
        Assert.Equal(Known.Of("0.007 mm"), shape.OutOfRound);
        Assert.Equal(Rational.FromRatio(48095, 6000), shape.Mean.Value);
        Assert.Equal(("top", "across"), (shape.LargestAt.Depth, shape.LargestAt.Direction));
        Assert.Equal(("bottom", "along"), (shape.SmallestAt.Depth, shape.SmallestAt.Direction));
    }

    [Fact]
    public void Inch_and_metric_readings_mix()
    {
        RoundShape shape = Known.Value(
            RoundShape.Of([
                new("top", "1", Known.Of("0.3150 in")),
                new("top", "2", Known.Of("8.000 mm")),
                new("bottom", "1", Known.Of("8.002 mm")),
            ])
        );

        Assert.Equal(Known.Of("8.002 mm"), shape.Largest);
        Assert.Equal(Known.Of("0.001 mm"), shape.OutOfRound);
        Assert.Equal(Known.Of("0.001 mm"), shape.Taper);
    }

    [Fact]
    public void Too_few_readings_are_refused()
    {
        Assert.Contains("two depths", Known.Fault(RoundShape.Of([])).Allowed, StringComparison.Ordinal);
        Assert.Contains("two depths", Fault(At("top", "1", 8), At("top", "2", 8)), StringComparison.Ordinal);
        Assert.Contains("two directions", Fault(At("top", "1", 8), At("bottom", "1", 8)), StringComparison.Ordinal);
        Assert.Contains(
            "one for each place",
            Fault(At("top", "1", 8), At("top", "1", 8.1m), At("top", "2", 8), At("bottom", "1", 8)),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "above 0",
            Fault(At("top", "1", 8), At("top", "2", 0), At("bottom", "1", 8)),
            StringComparison.Ordinal
        );
    }

    [Property]
    public void The_order_of_readings_does_not_matter(ushort a, ushort b, ushort c, ushort d)
    {
        DiameterReading[] all =
        [
            At("top", "1", 1 + a),
            At("top", "2", 1 + b),
            At("bottom", "1", 1 + c),
            At("bottom", "2", 1 + d),
        ];
        RoundShape shape = Known.Value(RoundShape.Of(all));
        RoundShape reversed = Known.Value(RoundShape.Of([.. all.Reverse()]));

        Assert.Equal((shape.Taper, shape.OutOfRound, shape.Mean), (reversed.Taper, reversed.OutOfRound, reversed.Mean));
        Assert.True(shape.Taper.CompareTo(shape.Largest - shape.Smallest) <= 0);
        Assert.True(shape.OutOfRound.CompareTo(shape.Largest - shape.Smallest) <= 0);
        Assert.True(shape.Smallest.CompareTo(shape.Mean) <= 0 && shape.Mean.CompareTo(shape.Largest) <= 0);
    }

    private static DiameterReading At(string depth, string direction, decimal millimetres) =>
        new(depth, direction, Known.Millimetres(millimetres));

    private static string Fault(params DiameterReading[] readings) => Known.Fault(RoundShape.Of(readings)).ToString();
}
