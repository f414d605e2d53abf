using ProcRunner.Quantities;

namespace ProcRunner.Yaml.Heads;

/// <summary>All that a written figure may stand for, in base units: half of its last digit to either side.</summary>
/// <param name="From">Least.</param>
/// <param name="To">Greatest.</param>
internal readonly record struct DigitInterval(Rational From, Rational To)
{
    /// <summary>Of 0.006 in: from 0.0055 in to 0.0065 in.</summary>
    public static DigitInterval Of(Quantity written)
    {
        Rational half = Rational.FromRatio(1, 2 * System.Numerics.BigInteger.Pow(10, written.Value.Scale));
        Rational value = Rational.FromDecimal(written.Value);
        return new DigitInterval(written.Unit.ToBase(value - half), written.Unit.ToBase(value + half));
    }

    /// <summary>Whether one amount can be what both stand for; touching counts.</summary>
    public bool Overlaps(DigitInterval other) => From <= other.To && other.From <= To;
}
