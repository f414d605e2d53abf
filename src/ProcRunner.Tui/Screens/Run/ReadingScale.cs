using System.Globalization;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>
/// A reading's window as a plain scale, low at the left, high at the right, with every reading so far on it by its number;
/// beneath it the readings in figures.
/// </summary>
internal static class ReadingScale
{
    private const int MostReadings = 5;

    /// <summary>True when the window has an end to draw.</summary>
    public static bool HasScale(Prompt prompt) => Ends(prompt.Window) is not null;

    /// <summary>Draws it into a rectangle of at least 6 rows.</summary>
    /// <returns>The row after it.</returns>
    public static int Draw(
        Canvas canvas,
        Look look,
        int column,
        int row,
        int width,
        int height,
        Prompt prompt,
        IReadOnlyList<Quantity> typed
    )
    {
        TakenReading[] readings = [.. prompt.Before];
        int next = row;
        if (Ends(prompt.Window) is { } ends)
        {
            DrawScale(canvas, look, column, row, width, ends, readings, prompt.Window);
            if (typed.Count > 0)
            {
                Mark(canvas, column, row, width, ends, typed);
            }

            next += 5;
        }

        int room = Math.Min(row + height - next - 1, MostReadings);
        if (readings.Length == 0 || room < 1)
        {
            return next;
        }

        canvas.Put(column, next++, "readings here so far", Ink.Quiet);
        for (int i = Math.Max(0, readings.Length - room); i < readings.Length; i++)
        {
            string number = string.Create(CultureInfo.InvariantCulture, $"{i + 1, 2}  {readings[i].Value}");
            int end = canvas.Put(column, next, Frame.Cut(number, width));
            canvas.Put(end + 2, next++, Frame.Cut(Word(readings[i]), column + width - end - 2), InkOf(readings[i]));
        }

        return next;
    }

    private static void DrawScale(
        Canvas canvas,
        Look look,
        int column,
        int row,
        int width,
        (double From, double To) ends,
        TakenReading[] readings,
        Judgement window
    )
    {
        canvas.Fill(column, row + 2, width, 1, look.Glyphs.Line, Ink.Quiet);
        List<(int From, int To)> taken = [];

        // The ends first: an aim that stands close to one of them moves aside, or is said by the large number alone.
        foreach (
            (Quantity? end, string name) in new[] { (window.Low, "low"), (window.High, "high"), (window.Aim, "aim") }
        )
        {
            if (end is not { } limit)
            {
                continue;
            }

            int at = Place(ValueOf(limit), ends, column, width);
            string number = limit.Value.ToString(CultureInfo.InvariantCulture);
            canvas.Put(at, row + 2, look.Glyphs.Upright, Ink.Strong);
            int from = Centred(at, number, column, width);
            if (Free(taken, from, number.Length, column, column + width) is { } free)
            {
                taken.Add((free, free + number.Length));
                canvas.Put(free, row + 1, number);
                int word = free == from ? Centred(at, name, column, width) : free + ((number.Length - name.Length) / 2);
                canvas.Put(word, row, name, Ink.Quiet);
            }
        }

        for (int i = Math.Max(0, readings.Length - 9); i < readings.Length; i++)
        {
            double value = Exact.Of(readings[i].Value).Value.ToDouble();
            int at = Math.Clamp(Place(value, ends, column, width), column, column + width - 1);
            canvas.Put(at, row + 3, (char)('0' + ((i + 1) % 10)), InkOf(readings[i]));
        }
    }

    // The place nearest to where a label belongs that touches no other one.
    private static int? Free(List<(int From, int To)> taken, int from, int length, int left, int right)
    {
        for (int by = 0; by <= right - left; by++)
        {
            foreach (int at in new[] { from - by, from + by })
            {
                bool fits = at >= left && at + length <= right;
                if (fits && taken.All(t => at + length < t.From || at > t.To))
                {
                    return at;
                }
            }
        }

        return null;
    }

    private static void Mark(
        Canvas canvas,
        int column,
        int row,
        int width,
        (double From, double To) ends,
        IReadOnlyList<Quantity> typed
    )
    {
        foreach (Quantity value in typed)
        {
            int at = Math.Clamp(Place(ValueOf(value), ends, column, width), column, column + width - 1);
            canvas.Put(at, row + 3, 'x', Ink.Strong);
        }

        canvas.Put(column, row + 4, "x typed now", Ink.Quiet);
    }

    // Far outside is just outside: a slip of the finger can be a million times the window.
    private static int Place(double value, (double From, double To) ends, int column, int width)
    {
        double share = Math.Clamp((value - ends.From) / (ends.To - ends.From), -1, 2);
        return column + 3 + (int)Math.Round(share * (width - 7));
    }

    private static int Centred(int at, string text, int column, int width) =>
        Math.Clamp(at - (text.Length / 2), column, Math.Max(column, column + width - text.Length));

    // A window with one end is drawn from nothing, or to twice its end.
    private static (double From, double To)? Ends(Judgement window) =>
        window switch
        {
            { Low: { } low, High: { } high } when low.CompareTo(high) < 0 => (ValueOf(low), ValueOf(high)),
            { Low: null, High: { } high } when ValueOf(high) > 0 => (0, ValueOf(high)),
            { Low: { } low, High: null } when ValueOf(low) > 0 => (ValueOf(low), 2 * ValueOf(low)),
            _ => null,
        };

    private static double ValueOf(Quantity quantity) => Exact.Of(quantity).Value.ToDouble();

    private static string Word(TakenReading reading) =>
        !reading.Good ? "out"
        : reading.Judgement.Verdict == Verdict.Short ? "more to cut"
        : reading.Judgement.Verdict == Verdict.In ? "in limits"
        : "noted";

    private static Ink InkOf(TakenReading reading) =>
        !reading.Good ? Ink.Bad
        : reading.Judgement.Verdict == Verdict.In ? Ink.Good
        : Ink.Plain;
}
