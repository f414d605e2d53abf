using System.Globalization;
using ProcRunner.Quantities;
using ProcRunner.Shop;

namespace ProcRunner.Tui.Drawing;

/// <summary>
/// The face of a gauge as lines of text, to be read as at the bench: a micrometer's sleeve, thimble and vernier; a dial's
/// hands; only an instrument that shows digits shows digits.
/// </summary>
internal static class GaugeFace
{
    /// <summary>No line is longer.</summary>
    public const int Width = 27;

    private const int Reach = 12;
    private static readonly Quantity InchTurn = new(0.025m, Units.Inch);

    /// <summary>The face while it shows a quantity.</summary>
    /// <param name="gauge">The gauge.</param>
    /// <param name="shown">What it shows, a whole number of its steps.</param>
    public static IReadOnlyList<string> Of(Gauge gauge, Quantity shown) =>
        gauge.Turn is not { } turn ? Digits(gauge, shown)
        : turn.CompareTo(InchTurn) == 0 && shown.Unit == Units.Inch && shown.Value >= 0 ? Micrometer(shown)
        : turn.Unit == shown.Unit ? Dial(gauge, turn, shown)
        : Digits(gauge, shown);

    private static string[] Digits(Gauge gauge, Quantity shown)
    {
        string figures = shown.ToString();
        string edge = new('-', figures.Length + 2);
        return [gauge.Kind, $" .{edge}.", $" | {figures} |", $" '{edge}'"];
    }

    // A sleeve in tenths with a line every 0.025 in, a thimble of 25 lines, a vernier of ten.
    private static string[] Micrometer(Quantity shown)
    {
        decimal whole = Math.Floor(shown.Value);
        decimal rest = shown.Value - whole;
        int lines = (int)Math.Floor(rest / 0.025m);
        decimal thimble = (rest - (lines * 0.025m)) * 1000;
        int at = (int)Math.Floor(thimble);
        int vernier = (int)Math.Round((thimble - at) * 10);
        int first = Math.Max(0, (lines / 4) - 1) * 4;
        string numbers = "";
        string marks = "";
        for (int line = first; line <= lines; line++)
        {
            bool isTenth = line % 4 == 0;
            numbers += isTenth ? (line / 4).ToString(CultureInfo.InvariantCulture).PadRight(2) : "  ";
            marks += isTenth ? "| " : "' ";
        }

        string Thimble(int offset) => ((at + offset + 25) % 25).ToString(CultureInfo.InvariantCulture).PadLeft(2);
        string blank = new(' ', marks.Length);
        return
        [
            string.Create(CultureInfo.InvariantCulture, $"micrometer, {whole} to {whole + 1} in"),
            $" {numbers}|- {Thimble(2)}",
            $" {marks}|- {Thimble(1)}",
            $" {new string('=', marks.Length)}| <",
            $" {blank}|- {Thimble(0)}",
            $" {blank}|- {Thimble(-1)}",
            string.Create(CultureInfo.InvariantCulture, $" vernier: line {vernier} meets"),
        ];
    }

    // A small hand for turns, a large one over a cut-out of the dial: a long mark every ten steps, a middle one at five.
    private static string[] Dial(Gauge gauge, Quantity turn, Quantity shown)
    {
        decimal step = gauge.Resolution.Value;
        decimal size = Math.Abs(shown.Value);
        int turns = (int)Math.Floor(size / turn.Value);
        int at = (int)Math.Round((size - (turns * turn.Value)) / step);
        int around = (int)Math.Round(turn.Value / step);
        char[] marks = new char[(2 * Reach) + 1];
        char[] numbers = [.. new string(' ', marks.Length + 4)];
        for (int i = -Reach; i <= Reach; i++)
        {
            int here = ((at + i) % around + around) % around;
            marks[i + Reach] =
                here % 10 == 0 ? '|'
                : here % 5 == 0 ? '+'
                : '.';
            if (here % 10 == 0)
            {
                string number = (here * step).ToString("0.000#", CultureInfo.InvariantCulture)[1..];
                number.CopyTo(0, numbers, i + Reach, Math.Min(number.Length, numbers.Length - i - Reach));
            }
        }

        string side = shown.Value < 0 ? "back of zero" : "past zero";
        return
        [
            string.Create(CultureInfo.InvariantCulture, $"{gauge.Kind}, {turn} a turn"),
            string.Create(CultureInfo.InvariantCulture, $"small hand: {turns} {side}"),
            new string(numbers)[..Width],
            new string(marks),
            new string(' ', Reach) + "^",
            string.Create(CultureInfo.InvariantCulture, $"a mark is {gauge.Resolution}"),
        ];
    }
}
