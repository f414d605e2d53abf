using PdfSharp.Drawing;
using ProcRunner.Records.Drawings;
using ProcRunner.Records.Papers;

namespace ProcRunner.Records.Print;

/// <summary>Prints a table: its headings again on every sheet, a row never torn unless it is taller than a sheet.</summary>
internal sealed class TablePrinter
{
    /// <summary>What a table needs of a sheet to begin on it: its caption, its headings and a row or two.</summary>
    public const double LeastHeight = 70;

    private readonly double _size;
    private readonly double _line;
    private readonly double _pad;
    private readonly Sheets _sheets;
    private readonly Block.Table _table;
    private readonly double[] _lefts;
    private readonly double[] _widths;

    private TablePrinter(Sheets sheets, Block.Table table)
    {
        (_sheets, _table) = (sheets, table);
        _size = sheets.IsClose ? 6.8 : 7.4;
        _line = _size * (sheets.IsClose ? 1.22 : 1.28);
        _pad = sheets.IsClose ? 1.7 : 3;
        double shares = table.Columns.Sum(c => c.Share);
        _widths = [.. table.Columns.Select(c => Sheets.Width * c.Share / shares)];
        _lefts = [.. _widths.Select((_, i) => Sheets.Left + _widths.Take(i).Sum())];
    }

    /// <summary>Prints it.</summary>
    public static void Print(Sheets sheets, Block.Table table)
    {
        TablePrinter printer = new(sheets, table);
        sheets.Need(LeastHeight);
        sheets.Words(table.Caption, 8.5, Sheets.Left, Sheets.Width, tone: Tone.Quiet);
        sheets.Y += 2;
        printer.Headings();
        foreach (Row row in table.Rows)
        {
            printer.Print(row);
        }

        sheets.Y += 8;
    }

    private void Headings()
    {
        List<string>[] cells = [.. _table.Columns.Select((c, i) => Broken(c.Name, i, isBold: true))];
        double height = HeightOf(cells, 0, int.MaxValue);
        _sheets.On.DrawRectangle(Ink.Brush(Tone.Ground), Sheets.Left, _sheets.Y, Sheets.Width, height);
        Put(cells, 0, int.MaxValue, everyBold: true);
        Rule(Tone.Ink);
    }

    private void Print(Row row)
    {
        List<string>[] cells = [.. row.Cells.Select((text, i) => Broken(text, i, isBold: i == 0))];
        int lines = cells.Max(c => c.Count);
        for (int from = 0; from < lines; )
        {
            double whole = ((lines - from) * _line) + (2 * _pad);
            if (whole > _sheets.Room && _sheets.Y > Sheets.Top + 40)
            {
                _sheets.Turn();
                Headings();
            }

            int fits = Math.Min(lines - from, Math.Max(1, (int)((_sheets.Room - (2 * _pad)) / _line)));
            if (row.NeedsAttention)
            {
                double height = HeightOf(cells, from, fits);
                _sheets.On.DrawRectangle(Ink.Brush(Tone.AttentionGround), Sheets.Left, _sheets.Y, Sheets.Width, height);
            }

            Put(cells, from, fits, everyBold: false);
            from += fits;
        }

        Rule(Tone.Rule);
    }

    private List<string> Broken(string text, int column, bool isBold) =>
        _sheets.Ink.Lines(_sheets.Ink.Fit(text, isBold), _sheets.Ink.Font(_size, isBold), _widths[column] - (2 * _pad));

    private double HeightOf(List<string>[] cells, int from, int count) =>
        (Math.Min(count, cells.Max(c => c.Count) - from) * _line) + (2 * _pad);

    private void Put(List<string>[] cells, int from, int count, bool everyBold)
    {
        double height = HeightOf(cells, from, count);
        for (int i = 0; i < cells.Length; i++)
        {
            XFont font = _sheets.Ink.Font(_size, everyBold || i == 0);
            double y = _sheets.Y + _pad + _size;
            foreach (string line in cells[i].Skip(from).Take(count))
            {
                _sheets.On.DrawString(line, font, Ink.Brush(Tone.Ink), _lefts[i] + _pad, y);
                y += _line;
            }
        }

        _sheets.Y += height;
    }

    private void Rule(Tone tone) =>
        _sheets.On.DrawLine(Ink.Pen(tone, 0.5), Sheets.Left, _sheets.Y, Sheets.Left + Sheets.Width, _sheets.Y);
}
