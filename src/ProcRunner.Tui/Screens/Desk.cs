using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Screens;

/// <summary>The screens that lie on top of each other; the topmost is seen and gets the keys.</summary>
internal sealed class Desk
{
    /// <summary>Fewest columns a screen is drawn in.</summary>
    public const int FewestColumns = 80;

    /// <summary>Fewest rows a screen is drawn in.</summary>
    public const int FewestRows = 24;

    private readonly Stack<Screen> _screens = new();
    private readonly TimeProvider _time = TimeProvider.System;
    private long _lastKey;
    private Screen? _asking;
    private bool _isUnseen;

    /// <summary>A desk with its screens, the lowest first.</summary>
    public Desk(params ReadOnlySpan<Screen> screens)
    {
        foreach (Screen screen in screens)
        {
            Show(screen);
        }
    }

    /// <summary>Who is at the machine; null where nobody is asked.</summary>
    public IAttendance? Attendance { get; init; }

    /// <summary>What idle time goes by: a clock that nobody can set.</summary>
    public TimeProvider Time
    {
        init
        {
            _time = value;
            _lastKey = value.GetTimestamp();
        }
    }

    /// <summary>The screen on top; null when the last one was left.</summary>
    public Screen? Top => _screens.TryPeek(out Screen? top) ? top : null;

    /// <summary>Set when a screen came up that rings the bell; whoever rings it takes it.</summary>
    public bool BellDue { get; private set; }

    /// <summary>True once, when the bell is to ring.</summary>
    public bool TakeBell()
    {
        bool due = BellDue;
        BellDue = false;
        return due;
    }

    /// <summary>The picture at a size; smaller than 80x24 it says so and waits.</summary>
    public Canvas Draw(int width, int height, Look look)
    {
        Canvas canvas = new(Math.Max(1, width), Math.Max(1, height));
        _isUnseen = width < FewestColumns || height < FewestRows;
        if (_isUnseen)
        {
            string size = string.Create(
                System.Globalization.CultureInfo.InvariantCulture,
                $"This window is {width} x {height}; 80 x 24 is needed. Everything entered is kept; until then only Ctrl+Q does anything."
            );
            canvas.PutWrapped(0, 0, canvas.Width, canvas.Height, size, Ink.Mind);
            return canvas;
        }

        Top?.Draw(canvas, look);
        if (Top is { IsPractice: true })
        {
            const string Mark = " PRACTICE ";
            canvas.Put((width - Mark.Length) / 2, 0, Mark, Ink.Practice);
            canvas.Put((width - Mark.Length) / 2, height - 1, Mark, Ink.Practice);
        }

        return canvas;
    }

    /// <summary>Time has gone by: after long enough without a key it is asked who works. Whatever lies below waits as it is.</summary>
    public void Tick()
    {
        if (Attendance?.IdleAfter is { } after && !IsAsking && _time.GetElapsedTime(_lastKey) >= after)
        {
            Ask(idle: true);
        }
    }

    /// <summary>Gives the top screen a key, if it is seen: nobody types, or feeds a tool, blindly.</summary>
    public void Press(KeyPress key)
    {
        Tick();
        _lastKey = _time.GetTimestamp();
        if (_isUnseen)
        {
            return;
        }

        if (key.Kind == KeyKind.Who)
        {
            if (!IsAsking)
            {
                Ask(idle: false);
            }

            return;
        }

        switch (Top?.Press(key))
        {
            case Turn.To to:
                Show(to.Screen);
                break;
            case Turn.Instead instead:
                _screens.Pop();
                Show(instead.Screen);
                if (instead.Above is { } above)
                {
                    Show(above);
                }

                break;
            case Turn.Up when key.Kind == KeyKind.Escape && _screens.Count == 1:
                break;
            case Turn.Up:
                _screens.Pop().Left();
                Top?.Return();
                break;
            case Turn.Leave:
                _screens.Clear();
                break;
            default:
                break;
        }
    }

    private bool IsAsking => _asking is { } asking && _screens.Contains(asking);

    private void Ask(bool idle)
    {
        if (Top is null || Attendance?.AskWho(idle) is not { } asking)
        {
            return;
        }

        Screen[] below = [.. _screens.Reverse()];
        _screens.Clear();
        foreach (Screen screen in below)
        {
            _screens.Push(screen.ForgetPins() ?? screen);
        }

        _asking = asking;
        Show(asking);
    }

    private void Show(Screen screen)
    {
        _screens.Push(screen);
        BellDue |= screen.RingsBell;
    }
}
