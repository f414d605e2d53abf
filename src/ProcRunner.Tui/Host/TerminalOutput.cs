using System.Globalization;
using System.Text;
using Terminal.Gui.Drivers;
using Cell = Terminal.Gui.Drawing.Cell;

namespace ProcRunner.Tui.Host;

/// <summary>
/// What goes to the terminal: only cells that changed, one write a picture, in our own colours. Terminal.Gui's questions to the
/// terminal (its colours, pictures, key protocols) aren't asked: nothing here needs the answers, and a slow line would pay.
/// </summary>
internal sealed class TerminalOutput(ColourDepth depth) : AnsiOutput, IOutput, IDisposable
{
    /// <summary>Number pad and cursor keys as plain characters, no mouse reports: VT220 (EK-VT220-RM) 4.6.18, xterm's control sequences.</summary>
    public const string PlainKeys = "\u001b[?1l\u001b>\u001b[?1000;1002;1003;1006;1015l";

    // The library keeps all that was sent since it last drew by itself; a picture of nothing has it forget.
    private static readonly OutputBufferImpl Nothing = new();

    private static readonly TimeSpan LongestWrite = TimeSpan.FromMilliseconds(200);

    private readonly Lock _gate = new();
    private HostColours _colours = new(depth);
    private (int Columns, int Rows) _size;
    private (int Column, int Row)? _cursorShown;
    private bool _closed;
    private bool _repaint = true;

    /// <summary>Where the cursor is to stand; null for none.</summary>
    public (int Column, int Row)? CursorAt { get; set; }

    /// <summary>The colours in use.</summary>
    public ColourDepth Depth
    {
        get;
        set => (field, _colours) = (value, new HostColours(value));
    } = depth;

    /// <summary>Everything is sent again with the next picture.</summary>
    public void Repaint() => _repaint = true;

    /// <summary>Sends a sequence of the host's own, unless the terminal was already given back.</summary>
    public void Send(string sequence)
    {
        lock (_gate)
        {
            if (!_closed)
            {
                Write(new StringBuilder(sequence));
            }
        }
    }

    /// <inheritdoc/>
    public override void Write(IOutputBuffer buffer)
    {
        lock (_gate)
        {
            if (_closed || buffer.Contents is not { } cells)
            {
                return;
            }

            base.Write(Nothing);
            StringBuilder picture = new();
            bool all = _repaint || _size != (buffer.Cols, buffer.Rows);
            if (all)
            {
                _size = (buffer.Cols, buffer.Rows);
                _repaint = false;
                picture.Append("\u001b[0m\u001b[2J");
            }

            AppendCells(picture, cells, buffer.DirtyLines, all);
            AppendCursor(picture);
            if (picture.Length > 0)
            {
                Write(picture);
            }
        }
    }

    /// <summary>The library asks the terminal nothing through this.</summary>
    void IOutput.Write(ReadOnlySpan<char> text) { }

    /// <summary>The cursor goes with the picture.</summary>
    void IOutput.SetCursor(Cursor cursor) { }

    /// <summary>Gives the terminal back: keys plain, colours and alternate screen off, cursor on. Once; from any thread.</summary>
    void IDisposable.Dispose()
    {
        // A write that hangs must not keep the program from ending.
        bool entered = _gate.TryEnter(LongestWrite);
        try
        {
            if (_closed)
            {
                return;
            }

            _closed = true;
            Write(new StringBuilder(PlainKeys));
            Dispose();
        }
        finally
        {
            if (entered)
            {
                _gate.Exit();
            }
        }
    }

    private void AppendCells(StringBuilder picture, Cell[,] cells, bool[] dirtyLines, bool all)
    {
        string sent = "";
        for (int row = 0; row < cells.GetLength(0); row++)
        {
            if (!all && !dirtyLines[row])
            {
                continue;
            }

            dirtyLines[row] = false;
            int next = -1;
            for (int column = 0; column < cells.GetLength(1); column++)
            {
                ref Cell cell = ref cells[row, column];
                if (!all && !cell.IsDirty)
                {
                    continue;
                }

                cell.IsDirty = false;
                if (column != next)
                {
                    AppendPlace(picture, column, row);
                }

                string sequence = _colours.SequenceFor(cell.Attribute);
                picture.Append(sequence == sent ? "" : sequence).Append(cell.Grapheme);
                sent = sequence;
                next = column + 1;
            }
        }
    }

    private void AppendCursor(StringBuilder picture)
    {
        bool moved = picture.Length > 0;
        if (CursorAt is { } at && (moved || _cursorShown != at))
        {
            AppendPlace(picture, at.Column, at.Row);
        }

        if (CursorAt.HasValue != _cursorShown.HasValue)
        {
            picture.Append(CursorAt.HasValue ? "\u001b[?25h" : "\u001b[?25l");
        }

        _cursorShown = CursorAt;
    }

    private static void AppendPlace(StringBuilder picture, int column, int row) =>
        picture.Append(CultureInfo.InvariantCulture, $"\u001b[{row + 1};{column + 1}H");
}
