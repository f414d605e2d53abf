using System.Numerics;

namespace ProcRunner.Quantities;

/// <summary>The parts of a <see cref="Rational"/> of which one at least has more than 63 bits; reduced.</summary>
internal sealed record LargeRatio(BigInteger Above, BigInteger Below);
