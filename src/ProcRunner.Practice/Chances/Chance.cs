namespace ProcRunner.Practice.Chances;

/// <summary>A stream of chance. Two with the same key give the same numbers, whatever else is drawn beside them.</summary>
/// <param name="key">The stream's key.</param>
public sealed class Chance(ulong key)
{
    private ulong _next;

    /// <summary>The next 64 bits.</summary>
    public ulong Bits() => SplitMix.At(key, _next++);

    /// <summary>Between 0 and 1, neither included.</summary>
    public double Even() => ((Bits() >> 11) + 0.5) * (1.0 / (1UL << 53));

    /// <summary>From the normal law with mean 0 and deviation 1 (Box and Muller 1958: two even numbers give it exactly).</summary>
    public double Normal() => Math.Sqrt(-2 * Math.Log(Even())) * Math.Cos(2 * Math.PI * Even());

    /// <summary>True as often as said, of 1; draws one number whatever the share.</summary>
    public bool Happens(double share) => Even() < share;
}
