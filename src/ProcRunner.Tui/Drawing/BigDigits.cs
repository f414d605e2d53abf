namespace ProcRunner.Tui.Drawing;

/// <summary>Figures and the letters of positions in blocks, read from two metres: five rows high, or a multiple of that.</summary>
internal static class BigDigits
{
    /// <summary>Rows of a figure at scale 1.</summary>
    public const int Rows = 5;

    private static readonly Dictionary<char, string[]> Shapes = new()
    {
        ['0'] = ["#####", "#   #", "#   #", "#   #", "#####"],
        ['1'] = ["  #  ", " ##  ", "  #  ", "  #  ", " ### "],
        ['2'] = ["#####", "    #", "#####", "#    ", "#####"],
        ['3'] = ["#####", "    #", " ####", "    #", "#####"],
        ['4'] = ["#   #", "#   #", "#####", "    #", "    #"],
        ['5'] = ["#####", "#    ", "#####", "    #", "#####"],
        ['6'] = ["#####", "#    ", "#####", "#   #", "#####"],
        ['7'] = ["#####", "    #", "   # ", "  #  ", "  #  "],
        ['8'] = ["#####", "#   #", "#####", "#   #", "#####"],
        ['9'] = ["#####", "#   #", "#####", "    #", "#####"],
        ['.'] = ["  ", "  ", "  ", "  ", "# "],
        ['-'] = ["   ", "   ", "###", "   ", "   "],
        ['+'] = ["   ", " # ", "###", " # ", "   "],
        ['A'] = [" ### ", "#   #", "#####", "#   #", "#   #"],
        ['B'] = ["#### ", "#   #", "#### ", "#   #", "#### "],
        ['C'] = ["#####", "#    ", "#    ", "#    ", "#####"],
        ['D'] = ["#### ", "#   #", "#   #", "#   #", "#### "],
        ['E'] = ["#####", "#    ", "#### ", "#    ", "#####"],
        ['I'] = ["#####", "  #  ", "  #  ", "  #  ", "#####"],
        [' '] = ["  ", "  ", "  ", "  ", "  "],
    };

    /// <summary>True when every character of a text has a shape.</summary>
    public static bool CanDraw(string text) => text.Length > 0 && text.All(Shapes.ContainsKey);

    /// <summary>Columns that a text takes at a scale.</summary>
    public static int WidthOf(string text, int scale = 1) => text.Sum(c => (Shapes[c][0].Length + 1) * scale) - scale;

    /// <summary>Draws a text of figures, its top left at a place.</summary>
    public static void Draw(Canvas canvas, int column, int row, string text, Glyphs glyphs, Ink ink, int scale = 1)
    {
        foreach (char character in text)
        {
            string[] shape = Shapes[character];
            for (int y = 0; y < Rows * scale; y++)
            {
                for (int x = 0; x < shape[0].Length * scale; x++)
                {
                    if (shape[y / scale][x / scale] == '#')
                    {
                        canvas.Put(column + x, row + y, glyphs.Full, ink);
                    }
                }
            }

            column += (shape[0].Length + 1) * scale;
        }
    }
}
