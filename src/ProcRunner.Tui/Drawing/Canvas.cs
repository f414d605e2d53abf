using System.Text;
using ProcRunner.Text;

namespace ProcRunner.Tui.Drawing;

/// <summary>A screen as a grid of cells: what every screen draws on and every test reads. What is put outside is cut off.</summary>
internal sealed class Canvas
{
    private readonly Cell[] _cells;

    /// <summary>A blank canvas.</summary>
    public Canvas(int width, int height)
    {
        (Width, Height) = (width, height);
        _cells = new Cell[width * height];
        Array.Fill(_cells, Cell.Blank);
    }

    /// <summary>Columns.</summary>
    public int Width { get; }

    /// <summary>Rows.</summary>
    public int Height { get; }

    /// <summary>Where the cursor stands, or null for none.</summary>
    public (int Column, int Row)? Cursor { get; set; }

    /// <summary>The cell at a place.</summary>
    public Cell this[int column, int row] => _cells[(row * Width) + column];

    /// <summary>Puts text; text from people and files is made visible and safe, and every character takes one column.</summary>
    /// <returns>The column after it.</returns>
    public int Put(int column, int row, string text, Ink ink = Ink.Plain)
    {
        foreach (char character in SafeText.Show(text))
        {
            Put(column++, row, IsNarrow(character) ? character : '?', ink);
        }

        return column;
    }

    /// <summary>Puts one character.</summary>
    public void Put(int column, int row, char character, Ink ink)
    {
        if (column >= 0 && column < Width && row >= 0 && row < Height)
        {
            _cells[(row * Width) + column] = new Cell(character, ink);
        }
    }

    /// <summary>Puts text so that it ends before a column.</summary>
    public void PutRight(int end, int row, string text, Ink ink = Ink.Plain) =>
        Put(end - SafeText.Show(text).Length, row, text, ink);

    /// <summary>Puts text in lines of a width, broken at spaces; text that needs more lines than there are ends in "...".</summary>
    /// <returns>The row after it.</returns>
    public int PutWrapped(int column, int row, int width, int mostRows, string text, Ink ink = Ink.Plain)
    {
        List<string> lines = Wrap(SafeText.Show(text), width);
        for (int i = 0; i < lines.Count && i < mostRows; i++)
        {
            bool cut = i == mostRows - 1 && lines.Count > mostRows;
            string line = cut ? lines[i][..Math.Min(lines[i].Length, Math.Max(0, width - 3))] + "..." : lines[i];
            Put(column, row++, line, ink);
        }

        return row;
    }

    /// <summary>Fills a rectangle with one character.</summary>
    public void Fill(int column, int row, int width, int height, char character, Ink ink)
    {
        for (int y = row; y < row + height; y++)
        {
            for (int x = column; x < column + width; x++)
            {
                Put(x, y, character, ink);
            }
        }
    }

    /// <summary>The characters, line by line, without the spaces at line ends.</summary>
    public override string ToString()
    {
        StringBuilder text = new();
        for (int row = 0; row < Height; row++)
        {
            text.Append(
                new string([.. Enumerable.Range(0, Width).Select(column => this[column, row].Character)]).TrimEnd()
            );
            text.Append('\n');
        }

        return text.ToString();
    }

    /// <summary>Text in lines of a width, broken at spaces, a longer word where it must be.</summary>
    public static List<string> Wrap(string text, int width)
    {
        List<string> lines = [];
        StringBuilder line = new();
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                lines.Add(line.ToString());
                line.Clear();
            }

            line.Append(line.Length > 0 ? " " : "").Append(word);
            while (line.Length > width)
            {
                lines.Add(line.ToString(0, width));
                line.Remove(0, width);
            }
        }

        lines.Add(line.ToString());
        return lines;
    }

    // Wide, combining and surrogate characters would shift a whole line.
    private static bool IsNarrow(char character) =>
        character is >= ' ' and < '\u0300' || character is >= '\u2000' and < '\u2e80' && !char.IsSurrogate(character);
}
