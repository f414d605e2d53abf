using ProcRunner.Practice.Chances;

namespace ProcRunner.Practice.Tests;

/// <summary>The generator against published numbers, and what is made from it against its law.</summary>
public class SplitMixTests
{
    // SplitMix64 of seed 1234567: https://rosettacode.org/wiki/Pseudo-random_numbers/Splitmix64 (from memory).
    [Theory]
    [InlineData(0, 6457827717110365317)]
    [InlineData(1, 3203168211198807973)]
    [InlineData(2, 9817491932198370423)]
    [InlineData(3, 4593380528125082431)]
    [InlineData(4, 16408922859458223821)]
    public void Numbers_of_the_seed_1234567(ulong n, ulong expected) => Assert.Equal(expected, SplitMix.At(1234567, n));

    // Of seed 0, as S. Vigna's splitmix64.c gives it (from memory).
    [Fact]
    public void Numbers_of_the_seed_0() =>
        Assert.Equal(
            [0xE220A8397B1DCDAF, 0x6E789E6AA1B965F4, 0x06C45D188009454F],
            Enumerable.Range(0, 3).Select(n => SplitMix.At(0, (ulong)n))
        );

    // Mean 0, deviation 1, and the shares within 1 and 1.959964 deviations (tables of the normal law): 200,000 draws.
    [Fact]
    public void Normal_numbers_are_normal()
    {
        Chance chance = new(42);
        double[] draws = [.. Enumerable.Range(0, 200_000).Select(_ => chance.Normal())];

        Assert.Equal(0, draws.Average(), 0.01);
        Assert.Equal(1, MathNet.Numerics.Statistics.Statistics.StandardDeviation(draws), 0.01);
        Assert.Equal(0.682689, draws.Count(d => Math.Abs(d) < 1) / 200_000.0, 0.005);
        Assert.Equal(0.95, draws.Count(d => Math.Abs(d) < 1.959964) / 200_000.0, 0.003);
    }

    [Fact]
    public void Streams_are_apart()
    {
        ulong[] keys =
        [
            .. Enumerable.Range(0, 2000).Select(n => SplitMix.Inside(7, (ulong)n)),
            SplitMix.Inside(7, "micrometer"),
            SplitMix.Inside(7, "depth"),
        ];

        Assert.Equal(keys.Length, keys.Distinct().Count());
    }
}
