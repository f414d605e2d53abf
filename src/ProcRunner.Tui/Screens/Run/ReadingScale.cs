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
    /// <summary>Draws it into a rectangle of at least 6 rows.</summary>
    public static void Draw(Canvas canvas, Look look, int column, int row, int width, int height, Prompt prompt)
    {
        TakenReading[] readings = [.. prompt.Before];
        int next = row;
        if (Ends(prompt.Window) is { } ends)
        {
            DrawScale(canvas, look, column, row, width, ends, readings, prompt.Window);
            next += 5;
        }

        int room = row + height - next;
        if (readings.Length == 0 || room < 1)
        {
            return;
        }

        int first = Math.Max(0, readings.Length - Math.Max(0, room - 1));
        canvas.Put(column, next++, "readings here so far", Ink.Quiet);
        for (int i = first; i < readings.Length; i++)
        {
            string number = string.Create(CultureInfo.InvariantCulture, $"{i + 1, 2}  {readings[i].Value}");
            int end = canvas.Put(column, next, Frame.Cut(number, width));
            canvas.Put(end + 2, next++, Frame.Cut(Word(readings[i]), column + width - end - 2), InkOf(readings[i]));
        }
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
        int left = column + 3;
        int right = column + width - 4;
        int Place(double value) => left + (int)Math.Round((value - ends.From) / (ends.To - ends.From) * (right - left));
        canvas.Fill(column, row + 2, width, 1, look.Glyphs.Line, Ink.Quiet);
        foreach (
            (Quantity? end, string name) in new[] { (window.Low, "low"), (window.Aim, "aim"), (window.High, "high") }
        )
        {
            if (end is { } limit)
            {
                int at = Place(ValueOf(limit));
                string number = limit.Value.ToString(CultureInfo.InvariantCulture);
                canvas.Put(at, row + 2, look.Glyphs.Upright, Ink.Strong);
                canvas.Put(Centred(at, name, column, width), row, name, Ink.Quiet);
                canvas.Put(Centred(at, number, column, width), row + 1, number);
            }
        }

        for (int i = Math.Max(0, readings.Length - 9); i < readings.Length; i++)
        {
            double value = Exact.Of(readings[i].Value).Value.ToDouble();
            int at = Math.Clamp(Place(value), column, column + width - 1);
            canvas.Put(at, row + 3, (char)('0' + ((i + 1) % 10)), InkOf(readings[i]));
        }
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
