using System.Diagnostics.CodeAnalysis;
using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>Reads one quantity or a row of them.</summary>
internal static class WorkAmounts
{
    // Past any size of the shop; within these no unit change and no rounding to a step leaves a decimal.
    private const decimal TooLarge = 1_000_000_000_000m;
    private const int MostPlaces = 15;

    /// <summary>
    /// Numbers with spaces between, each with its unit or followed later by the unit of all that have none. A comma may stand
    /// before a space; any other is refused, since 0,5 is a half to some and a list to others.
    /// </summary>
    public static bool TryRead(
        string text,
        Unit usual,
        out IReadOnlyList<Quantity> amounts,
        [NotNullWhen(false)] out string? why
    )
    {
        List<Quantity> read = [];
        List<string> bare = [];
        amounts = read;
        string[] tokens = text.Replace(", ", " ", StringComparison.Ordinal)
            .Split(' ', StringSplitOptions.RemoveEmptyEntries);
        foreach (string token in tokens)
        {
            bool isUnit = bare.Count > 0 && Units.Find(token) is { Symbol.Length: > 0 };
            bool isBare = !isUnit && Quantity.TryParse(token, out Quantity number) && number.Unit == Units.One;
            if (isBare)
            {
                bare.Add(token);
                continue;
            }

            if (!isUnit && !Quantity.TryParse(token, out _))
            {
                why = $"{token} is no number with a unit, as in {Sample(usual)}";
                return false;
            }

            IEnumerable<string> done = isUnit
                ? bare.Select(one => $"{one} {token}")
                : [.. bare.Select(one => $"{one} {UnitOf(token)}"), token];
            if (!TryAdd(done, usual, read, out why))
            {
                return false;
            }

            bare.Clear();
        }

        return TryAdd(bare, usual, read, out why);
    }

    private static bool TryAdd(
        IEnumerable<string> texts,
        Unit usual,
        List<Quantity> read,
        [NotNullWhen(false)] out string? why
    )
    {
        foreach (string text in texts)
        {
            if (!Quantity.TryParse(text, out Quantity quantity))
            {
                why = $"{text} is no number with a unit, as in {Sample(usual)}";
                return false;
            }

            if (quantity.Dimension != usual.Dimension)
            {
                why =
                    quantity.Unit == Units.One
                        ? $"it has no unit; {A(usual.Dimension)} is wanted, as in {Sample(usual)}"
                        : $"{quantity.Unit.Symbol} is a unit of {quantity.Dimension}; {A(usual.Dimension)} is wanted, as in {Sample(usual)}";
                return false;
            }

            if (Math.Abs(quantity.Value) >= TooLarge || quantity.Value.Scale > MostPlaces)
            {
                why = $"{text} has too many digits: no more than 12 before the point and 15 after";
                return false;
            }

            read.Add(quantity);
        }

        why = null;
        return true;
    }

    private static string A(Dimension dimension) =>
        dimension.ToString() is var words && "aeiou".Contains(words[0], StringComparison.Ordinal)
            ? "an " + words
            : "a " + words;

    private static string UnitOf(string token) =>
        Quantity.TryParse(token, out Quantity quantity) ? quantity.Unit.Symbol : "";

    private static string Sample(Unit unit) => new Quantity(1, unit).ToString();
}
