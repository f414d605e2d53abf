using System.Globalization;
using ProcRunner.Quantities;

namespace ProcRunner.Tui.Drawing;

/// <summary>
/// Hands over scales, of which as much is drawn as lies around the hand: a long mark with its number every ten steps, a middle
/// one at five, and a hand under the mark that it stands at.
/// </summary>
internal static class DialFace
{
    private const int Reach = 12;
    private const int TurnRoom = 4;

    /// <summary>A dial that goes round, with a small one that counts the turns. Back of zero both go to the left.</summary>
    /// <param name="kind">What it is called.</param>
    /// <param name="turn">One turn of the hand.</param>
    /// <param name="resolution">One mark.</param>
    /// <param name="shown">What it shows, in the unit of its turn.</param>
    public static IReadOnlyList<string> Round(string kind, Quantity turn, Quantity resolution, Quantity shown)
    {
        decimal size = Math.Abs(shown.Value);
        int turns = (int)Math.Floor(size / turn.Value);
        decimal rest = size - (turns * turn.Value);
        bool isBack = shown.Value < 0;
        return
        [
            $"{kind}, {turn} a turn",
            .. Small(turns, rest / turn.Value, isBack),
            .. Large((rest, resolution.Value), isBack ? -1 : 1, turn.Value, Figure),
            $"a mark is {resolution}",
            .. isBack ? ["back of 0: minus"] : Array.Empty<string>(),
        ];
    }

    /// <summary>A dial that stood at zero in a setting ring.</summary>
    /// <param name="kind">What it is called.</param>
    /// <param name="turn">One turn of the hand: rings are had at every one.</param>
    /// <param name="resolution">One mark.</param>
    /// <param name="shown">What it measures, not below 0, in the unit of its turn.</param>
    public static IReadOnlyList<string> Ring(string kind, Quantity turn, Quantity resolution, Quantity shown)
    {
        decimal rest = shown.Value % turn.Value;
        return
        [
            kind,
            $"at 0 in the ring {new Quantity(shown.Value - rest, shown.Unit)}",
            "",
            "over the ring:",
            .. Large((rest, resolution.Value), 1, turn.Value, Figure),
            $"a mark is {resolution}",
        ];
    }

    /// <summary>A hand that doesn't go round.</summary>
    /// <param name="kind">What it is called.</param>
    /// <param name="resolution">One mark.</param>
    /// <param name="shown">What it shows.</param>
    public static IReadOnlyList<string> Scale(string kind, Quantity resolution, Quantity shown) =>
        [
            $"{kind}, in {resolution.Unit}",
            "",
            .. Large(
                (shown.Value, resolution.Value),
                1,
                null,
                at => at.ToString("0.####", CultureInfo.InvariantCulture)
            ),
            $"a mark is {resolution}",
        ];

    // A scale of turns, its hand as far past a number as the large one is round.
    private static string[] Small(int turns, decimal part, bool isBack)
    {
        int first = Math.Max(0, turns - 2);
        const int Numbers = 5;
        const string Label = "turns ";
        char[] numbers = [.. new string(' ', (Numbers * TurnRoom) + 1)];
        char[] hand = [.. numbers];
        int Column(int past) => isBack ? numbers.Length - 3 - past : past;
        for (int i = 0; i < Numbers; i++)
        {
            string number = (first + i).ToString(CultureInfo.InvariantCulture);
            number.CopyTo(0, numbers, Column(i * TurnRoom), number.Length);
        }

        hand[Column(((turns - first) * TurnRoom) + (int)Math.Floor(part * TurnRoom))] = '^';
        return [Label + new string(numbers).TrimEnd(), new string(' ', Label.Length) + new string(hand).TrimEnd()];
    }

    private static string[] Large(
        (decimal At, decimal Step) hand,
        int sense,
        decimal? turn,
        Func<decimal, string> figure
    )
    {
        const int Margin = 1;
        char[] marks = [.. new string(' ', (2 * Reach) + 1)];
        char[] numbers = [.. new string(' ', GaugeFace.Width)];
        int at = (int)Math.Round(hand.At / hand.Step);
        for (int i = -Reach; i <= Reach; i++)
        {
            int here = at + (i * sense);
            decimal value = turn is { } whole ? ((here * hand.Step) + whole) % whole : here * hand.Step;
            int ofTen = ((here % 10) + 10) % 10;
            if (here < 0 && turn is null)
            {
                continue;
            }

            marks[i + Reach] =
                ofTen == 0 ? '|'
                : ofTen == 5 ? '+'
                : '.';
            string number = ofTen == 0 ? figure(value) : "";
            int column = i + Reach + Margin - (number.Length / 2);
            if (column >= 0 && column + number.Length <= numbers.Length)
            {
                number.CopyTo(0, numbers, column, number.Length);
            }
        }

        string margin = new(' ', Margin);
        return [new string(numbers).TrimEnd(), margin + new string(marks), margin + new string(' ', Reach) + "^"];
    }

    private static string Figure(decimal value) => value.ToString(".000#", CultureInfo.InvariantCulture);
}
