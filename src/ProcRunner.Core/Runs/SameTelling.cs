using System.Text.RegularExpressions;
using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>
/// Tells two texts that say the same, with their numbers in other units or to other places, from two that differ. Programs
/// may tell a worked-out value in another unit or to fewer places than an earlier one did; that decides nothing otherwise.
/// </summary>
internal static partial class SameTelling
{
    /// <summary>True for two texts that say the same of the same amounts.</summary>
    public static bool Is(string then, string now)
    {
        List<Quantity> before = [];
        List<Quantity> after = [];
        bool isAmount = Quantity.TryParse(then, out _) && Quantity.TryParse(now, out _);
        return WithoutNumbers(then, before) == WithoutNumbers(now, after)
            && before.Zip(after).All(pair => IsSame(pair.First, pair.Second, isAmount));
    }

    // In one unit and to the same places there is nothing to round: then only the same number is the same. Otherwise both
    // can be one amount that was rounded twice when they lie no further apart than the two roundings reach.
    private static bool IsSame(Quantity then, Quantity now, bool isAmount)
    {
        if (then.Dimension != now.Dimension)
        {
            return false;
        }

        bool isOneUnit = ReferenceEquals(then.Unit, now.Unit);
        if (isOneUnit && (then.Value == now.Value || then.Value.Scale == now.Value.Scale))
        {
            return then.Value == now.Value;
        }

        // A kept amount is never told to fewer places than its unit is read to.
        return !(isAmount && (IsCoarse(then) || IsCoarse(now)))
            && Distance(then, now) <= HalfOfLast(then) + HalfOfLast(now);
    }

    private static bool IsCoarse(Quantity amount) => amount.Value.Scale < Show.DigitsOf(amount.Unit);

    private static double Distance(Quantity then, Quantity now) =>
        Math.Abs(Exact.Of(then).Value.ToDouble() - Exact.Of(now).Value.ToDouble());

    // Between 0 and it, so that scales that don't begin at 0, as degF, count too.
    private static double HalfOfLast(Quantity amount)
    {
        decimal last = new(5, 0, 0, isNegative: false, (byte)Math.Min(28, amount.Value.Scale + 1));
        return Distance(new Quantity(last, amount.Unit), new Quantity(0, amount.Unit));
    }

    private static string WithoutNumbers(string text, List<Quantity> numbers) =>
        Number()
            .Replace(
                text,
                match =>
                {
                    string number = match.Groups["number"].Value;
                    bool hasUnit = match.Groups["unit"].Success && Units.Find(match.Groups["unit"].Value) is not null;
                    if (!Quantity.TryParse(hasUnit ? match.Value : number, out Quantity read))
                    {
                        return match.Value;
                    }

                    numbers.Add(read);
                    return hasUnit ? "#" : "#" + match.Value[number.Length..];
                }
            );

    [GeneratedRegex(
        "(?<number>-?[0-9]+([.][0-9]+)?)( (?<unit>[^ ,;()=]+))?",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Number();
}
