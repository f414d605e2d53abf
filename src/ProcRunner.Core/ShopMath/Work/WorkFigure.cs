using System.Globalization;
using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>One result: a quantity, or words where the answer is no number.</summary>
/// <param name="Name">What it is, in words.</param>
/// <param name="Value">Rounded, to nearest unless it was asked for otherwise, at the twelfth significant digit or later; null for words.</param>
/// <param name="Text">As it is shown: six significant digits, or all of up to nine that are exact.</param>
public sealed record WorkFigure(string Name, Quantity? Value, string Text)
{
    private const int MostExactPlaces = 6;
    private const int MostExactDigits = 9;
    private const int ShownDigits = 6;
    private const int KeptDigits = 12;

    // Nothing in a shop is smaller; a row of zeros says less than 0.
    private const int MostShownPlaces = 15;

    /// <summary>The amount before it is rounded for <see cref="Value"/>; null for words.</summary>
    public Exact? Amount { get; init; }

    /// <summary>Words.</summary>
    public static WorkFigure OfWords(string name, string words) => new(name, null, words);

    /// <summary>An amount in a unit; null if it is too large to be written.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="amount">The amount.</param>
    /// <param name="unit">The unit shown.</param>
    /// <param name="places">After the point, shown at least where the amount has an end: those of what was given.</param>
    /// <param name="rounding">Which way digits are cut: what may be used up goes down, so that the figure shown never passes the limit.</param>
    public static WorkFigure? Of(
        string name,
        Exact amount,
        Unit unit,
        int places = 0,
        Rounding rounding = Rounding.Nearest
    )
    {
        Rational value = amount.In(unit);
        if (
            value.TryToDecimal(out decimal exact)
            && exact.Scale <= MostExactPlaces
            && Math.Abs(value.ToDouble()) < Math.Pow(10, MostExactDigits - exact.Scale)
        )
        {
            // A sum takes over the places of its parts; adding 0 changes no amount.
            Quantity whole = new(
                exact + new decimal(0, 0, 0, false, (byte)Math.Clamp(places, 0, MostExactPlaces)),
                unit
            );
            return new WorkFigure(name, whole, whole.ToString()) { Amount = amount };
        }

        return
            value.TryRound(Places(value, KeptDigits), rounding, out decimal kept)
            && value.TryRound(Math.Min(Places(value, ShownDigits), MostShownPlaces), rounding, out decimal shown)
            ? new WorkFigure(name, new Quantity(kept, unit), new Quantity(shown == 0 ? 0 : shown, unit).ToString())
            {
                Amount = amount,
            }
            : null;
    }

    /// <summary><c>name = text</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name} = {Text}");

    // Places after the point that leave so many significant digits; 28 is the most a decimal has.
    private static int Places(Rational value, int digits)
    {
        double size = Math.Abs(value.ToDouble());
        int magnitude = size > 0 ? (int)Math.Floor(Math.Log10(size)) : 0;
        return Math.Clamp(digits - 1 - magnitude, 0, 28);
    }
}
