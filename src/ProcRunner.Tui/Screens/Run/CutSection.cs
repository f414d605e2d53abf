using System.Globalization;
using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>
/// A section through the metal under the cutter: what is gone fills downward past low, stop, aim and high, with what the
/// readout shows at each beside it. Not to scale between the levels; each has a row of its own.
/// </summary>
internal static class CutSection
{
    private const int Wall = 3;

    /// <summary>Draws it into a rectangle.</summary>
    public static void Draw(
        Canvas canvas,
        Look look,
        int column,
        int row,
        int width,
        int height,
        IReadOnlyList<CutLevel> levels
    )
    {
        CutLevel[] shown = [.. levels.Where(l => l.Travel.Sign >= 0)];
        int[] rows = RowsOf(shown, height);
        int picture = Math.Max(12, width - 15);
        int nowRow = rows[Array.FindIndex(shown, l => l.Name == "now")];
        for (int y = 0; y < height; y++)
        {
            int inner = picture - (2 * Wall);
            canvas.Fill(column, row + y, picture, 1, look.Glyphs.Full, Ink.Plain);
            if (y < nowRow)
            {
                canvas.Fill(column + Wall, row + y, inner, 1, look.Glyphs.Removed, Ink.Quiet);
            }
        }

        for (int i = 0; i < shown.Length; i++)
        {
            (char line, Ink ink) = Style(look, shown[i].Name);
            if (shown[i].Name != "zero")
            {
                canvas.Fill(column + Wall, row + rows[i], picture - (2 * Wall), 1, line, ink);
            }

            string number = shown[i].Shows.Value.ToString(CultureInfo.InvariantCulture);
            canvas.PutRight(column + picture + 9, row + rows[i], number, ink);
            canvas.Put(column + picture + 10, row + rows[i], shown[i].Name, ink);
        }
    }

    // In proportion where there is room, each level at least one row under the one before.
    private static int[] RowsOf(CutLevel[] levels, int height)
    {
        double deepest = Math.Max(1e-9, levels[^1].Travel.ToDouble());
        int[] rows = [.. levels.Select(l => (int)Math.Round(l.Travel.ToDouble() / deepest * (height - 1)))];
        for (int i = 1; i < rows.Length; i++)
        {
            rows[i] = Math.Max(rows[i], rows[i - 1] + 1);
        }

        for (int i = rows.Length - 1, most = height - 1; i >= 0; i--, most--)
        {
            rows[i] = Math.Min(rows[i], most);
        }

        return rows;
    }

    private static (char Line, Ink Ink) Style(Look look, string name) =>
        name switch
        {
            "now" => (look.Glyphs.Removed, Ink.Strong),
            "stop" => ('=', Ink.Act),
            "aim" => ('=', Ink.Strong),
            _ => (look.Glyphs.Line, Ink.Plain),
        };
}
