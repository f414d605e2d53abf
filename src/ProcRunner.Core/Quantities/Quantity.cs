using System.Buffers;
using System.Globalization;

namespace ProcRunner.Quantities;

/// <summary>
/// A value in the unit in which it was entered, with the places it was entered to (<c>0.0520 in</c>).
/// Equal when value and unit are equal; <see cref="SameAs"/> asks for the same amount in whatever unit.
/// </summary>
public readonly record struct Quantity : IComparable<Quantity>
{
    private static readonly SearchValues<char> NumberChars = SearchValues.Create("0123456789.");

    // Null stands for the pure number, so that default is 0 and equal to it.
    private readonly Unit? _unit;

    /// <summary>A value in a unit.</summary>
    public Quantity(decimal value, Unit unit)
    {
        Value = value;
        _unit = ReferenceEquals(unit, Units.One) ? null : unit;
    }

    /// <summary>The value, in <see cref="Unit"/>.</summary>
    public decimal Value { get; }

    /// <summary>The unit entered.</summary>
    public Unit Unit => _unit ?? Units.One;

    /// <summary>What is measured.</summary>
    public Dimension Dimension => Unit.Dimension;

    /// <summary>
    /// Reads a number, spaces if any, and a unit's symbol or alias: the form that <see cref="ToString"/> writes and that files
    /// hold. No fractions, exponents, group marks or signs other than a leading minus. False for anything else.
    /// </summary>
    public static bool TryParse(string? text, out Quantity quantity)
    {
        quantity = default;
        if (text is null)
        {
            return false;
        }

        bool negative = text.StartsWith('-');
        ReadOnlySpan<char> rest = text.AsSpan(negative ? 1 : 0);
        int end = rest.IndexOfAnyExcept(NumberChars);
        ReadOnlySpan<char> number = end < 0 ? rest : rest[..end];
        string unitText = end < 0 ? "" : rest[end..].TrimStart(' ').ToString();
        if (!DecimalText.TryUnsigned(number, out decimal value) || Units.Find(unitText) is not { } unit)
        {
            return false;
        }

        quantity = new Quantity(negative && value != 0 ? -value : value, unit);
        return true;
    }

    /// <summary>Whether both are the same amount, exactly; false if they measure different things.</summary>
    public bool SameAs(Quantity other) =>
        ReferenceEquals(_unit, other._unit) ? Value == other.Value : Exact.Of(this) == Exact.Of(other);

    /// <summary>Compares the amounts exactly, across units, by cross-multiplying; places do not count.</summary>
    /// <exception cref="ArgumentException">The other measures something else.</exception>
    public int CompareTo(Quantity other) =>
        ReferenceEquals(_unit, other._unit) ? Value.CompareTo(other.Value) : Exact.Of(this).CompareTo(Exact.Of(other));

    /// <summary>The amount in a unit, exactly.</summary>
    /// <exception cref="ArgumentException">The unit measures something else.</exception>
    internal Rational In(Unit unit) =>
        ReferenceEquals(unit, Unit) ? Rational.FromDecimal(Value) : Exact.Of(this).In(unit);

    /// <summary>The amount in another unit, rounded; false if that unit measures something else or it won't fit a decimal.</summary>
    /// <param name="unit">The unit wanted.</param>
    /// <param name="digits">After the point, 0 to 28.</param>
    /// <param name="mode">Which way to round.</param>
    /// <param name="converted">The result.</param>
    public bool TryConvert(Unit unit, int digits, Rounding mode, out Quantity converted) =>
        Exact.Of(this).TryToQuantity(unit, digits, mode, out converted);

    /// <summary>Value with all its places, a space, and the unit's symbol; the same in every culture.</summary>
    public override string ToString() =>
        _unit is null
            ? Value.ToString(CultureInfo.InvariantCulture)
            : string.Create(CultureInfo.InvariantCulture, $"{Value} {_unit.Symbol}");

    /// <summary>
    /// As <see cref="ToString"/>, but minutes of angle as degrees and minutes (<c>44°53'</c>), the way they are typed;
    /// <see cref="EntryText"/> reads it back as the same quantity.
    /// </summary>
    public string ToDisplay()
    {
        if (Unit != Units.ArcMinute)
        {
            return ToString();
        }

        decimal size = Math.Abs(Value);
        decimal minutes = size % 60;
        decimal degrees = decimal.Truncate((size - minutes) / 60);
        return string.Create(CultureInfo.InvariantCulture, $"{(Value < 0 ? "-" : "")}{degrees}\u00B0{minutes}'");
    }
}
