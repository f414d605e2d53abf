using System.Globalization;
using ProcRunner.Quantities;

namespace ProcRunner.Tui.Drawing;

/// <summary>
/// A micrometer as it lies in the hand: the sleeve with its long line, the thimble whose lines run past the end of that line,
/// the vernier laid out beneath. The long line ends at a line of the thimble or between two; which one it has passed is seen
/// and counted from a number, as on the real one, where every fifth line has one.
/// </summary>
internal static class MicrometerFace
{
    /// <summary>Lines of the thimble drawn below the end of the long line: of so many that follow each other one has a number.</summary>
    private const int Below = 5;

    private const int Above = 2;

    /// <summary>Room for a number of two figures over its line.</summary>
    private const int Narrowest = 3;

    private static readonly Make Inch = new(Units.Inch, 0.025m, 25, 4, 1, 2, 1);
    private static readonly Make Metric = new(Units.Millimetre, 0.5m, 50, 10, 5, 1, 25);

    /// <summary>True for a turn of a thimble as micrometers have it, and a step that it or its vernier can show.</summary>
    public static bool Fits(Quantity turn, Quantity resolution) =>
        MakeOf(turn) is { } make
        && resolution.Unit == make.Unit
        && resolution.Value % (make.Turn / make.Lines / 10) == 0;

    /// <summary>The face.</summary>
    /// <param name="turn">One turn of the thimble: 0.025 in or 0.5 mm.</param>
    /// <param name="resolution">The smallest step: a line of the thimble, or a tenth of one.</param>
    /// <param name="shown">What it shows, in the unit of its turn, not below 0.</param>
    public static IReadOnlyList<string> Of(Quantity turn, Quantity resolution, Quantity shown)
    {
        Make make = MakeOf(turn)!;
        decimal line = make.Turn / make.Lines;
        decimal frame = Math.Floor(shown.Value / make.Range) * make.Range;
        decimal rest = shown.Value - frame;
        int turns = (int)Math.Floor(rest / make.Turn);
        decimal thimble = (rest - (turns * make.Turn)) / line;
        int passed = (int)Math.Floor(thimble);
        int vernier = (int)Math.Round((thimble - passed) * 10);
        List<string> face =
        [
            string.Create(CultureInfo.InvariantCulture, $"micrometer, {frame} to {frame + make.Range} {make.Unit}"),
            .. Barrel(make, turns, passed, isBetween: vernier > 0),
        ];
        if (resolution.Value < line)
        {
            face.AddRange(Vernier(vernier));
        }

        return face;
    }

    private static Make? MakeOf(Quantity turn) =>
        turn.Unit == Inch.Unit && turn.Value == Inch.Turn ? Inch
        : turn.Unit == Metric.Unit && turn.Value == Metric.Turn ? Metric
        : null;

    // The sleeve at the left, numbers and lines over its long line (half millimetres under it), the thimble at the right.
    private static IEnumerable<string> Barrel(Make make, int turns, int passed, bool isBetween)
    {
        int first = Math.Max(0, (turns / make.Numbered) - (make.IsMetric ? 0 : 1)) * make.Numbered;
        int width = Math.Max(Narrowest, (turns - first + 1) * make.Columns);
        char[] numbers = [.. new string(' ', width)];
        char[] over = [.. new string(' ', width)];
        char[] under = [.. new string(' ', width)];
        for (int line = first; line <= turns; line++)
        {
            int column = (line - first) * make.Columns;
            bool hasNumber = line % make.Numbered == 0;
            bool isUnder = make.IsMetric && line % 2 == 1;
            (isUnder ? under : over)[column] = hasNumber ? '|' : '\'';
            if (hasNumber)
            {
                string number = (line / make.Numbered * make.Number).ToString(CultureInfo.InvariantCulture);
                number.CopyTo(0, numbers, Math.Min(column, width - number.Length), number.Length);
            }
        }

        string sleeve = new(' ', width);
        for (int i = Above; i >= 1; i--)
        {
            string left =
                i == 1 ? new string(over)
                : i == 2 ? new string(numbers)
                : sleeve;
            yield return $" {left}|{Line(make, passed + i)}";
        }

        yield return $" {new string('=', width)}|{(isBetween ? "" : Line(make, passed))}";
        for (int i = 0; i < Below; i++)
        {
            yield return $" {(i == 0 ? new string(under) : sleeve)}|{Line(make, passed - i - (isBetween ? 0 : 1))}";
        }
    }

    // Every fifth line is longer and has its number.
    private static string Line(Make make, int line)
    {
        int number = (line + make.Lines) % make.Lines;
        return number % 5 == 0 ? string.Create(CultureInfo.InvariantCulture, $"----{number, 3}") : "--";
    }

    // Nine of the thimble's lines over ten of the sleeve's: those before the one that meets lie on one side of it, those
    // after it on the other.
    private static IEnumerable<string> Vernier(int meets)
    {
        char[] thimble = [.. new string(' ', 20)];
        for (int i = 0; i < 10; i++)
        {
            thimble[(2 * i) + Math.Sign(meets - i)] = '|';
        }

        yield return "vernier 0 1 2 3 4 5 6 7 8 9";
        yield return " sleeve | | | | | | | | | |";
        yield return $"thimble {new string(thimble).TrimEnd()}";
    }

    // Numbered: how many lines of the sleeve from number to number, each Number more; Columns: room of one.
    private sealed record Make(Unit Unit, decimal Turn, int Lines, int Numbered, int Number, int Columns, decimal Range)
    {
        public bool IsMetric => Unit == Units.Millimetre;
    }
}
