using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Screens;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;
using Ink = ProcRunner.Tui.Drawing.Ink;

namespace ProcRunner.Tui.Host;

/// <summary>
/// The one view: the whole screen, without a border (a bordered one is sent again at any change inside it). It puts the cells of
/// the desk's picture that changed, and no others.
/// </summary>
internal sealed class DeskView : Runnable
{
    private readonly Desk _desk;
    private readonly bool _isUtf8;
    private readonly Glyphs _glyphs;
    private Canvas? _shown;
    private Canvas? _next;

    /// <summary>A view of a desk.</summary>
    public DeskView(Desk desk, bool isUtf8)
    {
        (_desk, _isUtf8) = (desk, isUtf8);
        _glyphs = isUtf8 ? Glyphs.Utf8 : Glyphs.Ascii;
        Border.Settings = default; // no title to the terminal either
    }

    /// <summary>Where the picture wants the cursor.</summary>
    public (int Column, int Row)? CursorAt => _next?.Cursor;

    /// <summary>The cells that are there are no longer to be trusted: all are put again.</summary>
    public void Forget() => _shown = null;

    /// <summary>Has the desk draw; asks to be drawn where that differs from what is shown.</summary>
    public void Compose(int width, int height, DateTimeOffset now)
    {
        _next = _desk.Draw(width, height, new Look(_glyphs, now));
        if (_shown is null || _shown.Cursor != _next.Cursor || Differ(_shown, _next))
        {
            SetNeedsDraw();
        }
    }

    /// <inheritdoc/>
    protected override bool OnClearingViewport() => true;

    /// <inheritdoc/>
    protected override bool OnDrawingContent(DrawContext? context)
    {
        if (_next is not { } next)
        {
            return true;
        }

        Canvas? shown = _shown is { } last && SameSize(last, next) ? last : null;
        for (int row = 0; row < next.Height; row++)
        {
            for (int column = 0; column < next.Width; )
            {
                column = shown?[column, row] == next[column, row] ? column + 1 : PutRun(next, shown, column, row);
            }
        }

        _shown = next;
        return true;
    }

    // Puts the changed cells of one ink from here on, and gives the column after them.
    private int PutRun(Canvas next, Canvas? shown, int column, int row)
    {
        Ink ink = next[column, row].Ink;
        int end = column;
        Span<char> text = stackalloc char[Math.Min(next.Width, 512)];
        while (
            end < next.Width
            && end - column < text.Length
            && next[end, row].Ink == ink
            && shown?[end, row] != next[end, row]
        )
        {
            text[end - column] = Shown(next[end, row].Character);
            end++;
        }

        SetAttribute(HostColours.Of(ink));
        AddStr(column, row, text[..(end - column)].ToString());
        return end;
    }

    private char Shown(char character) => _isUtf8 || character <= '~' ? character : '?';

    private static bool Differ(Canvas a, Canvas b)
    {
        if (!SameSize(a, b))
        {
            return true;
        }

        for (int row = 0; row < a.Height; row++)
        {
            for (int column = 0; column < a.Width; column++)
            {
                if (a[column, row] != b[column, row])
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static bool SameSize(Canvas a, Canvas b) => a.Width == b.Width && a.Height == b.Height;
}
