using System.Globalization;
using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>How exact amounts become the decimals that are kept and shown.</summary>
public static class Show
{
    private const int MostDigits = 8;

    /// <summary>Decimals that a unit is usually read to.</summary>
    public static int DigitsOf(Unit unit) =>
        unit.Symbol switch
        {
            "in" => 4,
            "mm" or "lbf/in" or "N/mm" => 3,
            "deg" or "cm3" or "in3" or "%" => 2,
            "rpm" or "degC" or "degF" => 0,
            _ => 1,
        };

    /// <summary>
    /// The amount in a unit: exact when it has a decimal of eight places or fewer, else rounded to two places more than
    /// the unit is read to.
    /// </summary>
    public static Quantity In(Exact amount, Unit unit, Rounding mode = Rounding.Nearest)
    {
        Rational value = amount.In(unit);
        int usual = DigitsOf(unit);
        if (!value.TryToDecimal(out decimal exact) || exact.Scale > MostDigits)
        {
            exact = value.TryRound(usual + 2, mode, out decimal rounded) ? rounded : decimal.MaxValue;
        }

        return new Quantity(exact.Scale < usual ? Padded(exact, usual) : exact, unit);
    }

    /// <summary>
    /// A worked-out amount as it is kept: to two places more than the unit is read to at the most. A product of rounded
    /// numbers has exact decimals that nobody measured, as 109.9999989 lbf.
    /// </summary>
    public static Quantity Kept(Exact amount, Unit unit)
    {
        Quantity exact = In(amount, unit);
        int most = DigitsOf(unit) + 2;
        return exact.Value.Scale > most && amount.TryToQuantity(unit, most, Rounding.Nearest, out Quantity kept)
            ? kept
            : exact;
    }

    /// <summary>The amount in a unit as text.</summary>
    public static string Plain(Exact amount, Unit unit) =>
        amount.Dimension == unit.Dimension
            ? In(amount, unit).ToString()
            : amount.Value.ToDouble().ToString("G6", CultureInfo.InvariantCulture);

    // 0.05 in is shown as 0.0500 in: columns of figures keep their places.
    private static decimal Padded(decimal value, int digits)
    {
        decimal zero = new(0, 0, 0, isNegative: false, (byte)digits);
        return Math.Abs(value) < 1_000_000_000m ? value + zero : value;
    }
}
