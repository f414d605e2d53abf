using System.Collections.Concurrent;
using ProcRunner.Tui.Screens;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;

namespace ProcRunner.Tui.Host;

/// <summary>
/// A desk on a terminal, from taking the terminal to giving it back. Turned by its owner, on one thread: Terminal.Gui's own loop
/// sleeps by the wall clock, so a clock set back an hour could stop it for an hour.
/// </summary>
internal sealed class HostSession : IDisposable
{
    private readonly Desk _desk;
    private readonly HostOptions _options;
    private readonly Wake _wake;
    private readonly TerminalOutput _output;
    private readonly TerminalParts _parts;
    private readonly DeskView _view;
    private readonly SessionToken _token;
    private readonly byte[]? _mode;
    private bool _left;

    /// <summary>Takes the terminal and shows the desk.</summary>
    /// <param name="desk">What is shown.</param>
    /// <param name="options">How.</param>
    /// <param name="wake">Wakes the loop.</param>
    /// <param name="gone">Called when the terminal is gone, from another thread.</param>
    public HostSession(Desk desk, HostOptions options, Wake wake, Action gone)
    {
        (_desk, _options, _wake) = (desk, options, wake);
        bool attached = Driver.IsAttachedToTerminal(out _, out _);
        _mode = attached && !OperatingSystem.IsWindows() ? UnixTerminal.Mode() : null;

        // The size by a system call, not by a question to the terminal.
        Driver.SizeDetection = attached ? SizeDetectionMode.Polling : SizeDetectionMode.AnsiQuery;
        _output = new TerminalOutput(options.Depth);
        _parts = new TerminalParts(_output, wake, gone);
        App = _parts.Application(new MonotonicTime(options.Time));
        _view = new DeskView(desk, options.Terminal.IsUtf8);
        try
        {
            _token = Begin();
        }
        catch
        {
            GiveBack();
            throw;
        }
    }

    /// <summary>The application, for tests.</summary>
    public IApplication App { get; }

    /// <summary>True when the last screen was left, or Ctrl+Q pressed.</summary>
    public bool IsOver => _left || _desk.Top is null;

    /// <summary>Takes what came since the last turn, and shows what came of it.</summary>
    /// <returns>True when anything came.</returns>
    public bool Turn()
    {
        bool came = Keys is { IsEmpty: false };
        App.Driver!.GetInputProcessor().ProcessQueue();
        _parts.Size?.Poll();
        App.TimedEvents!.RunTimers();
        if (IsOver)
        {
            return came;
        }

        _desk.Tick();
        if (_output.Depth != _options.Depth)
        {
            _output.Depth = _options.Depth;
            Repaint();
        }

        Compose();
        App.LayoutAndDraw();
        if (_desk.TakeBell() && _options.RingsBell())
        {
            _output.Send("\a");
        }

        return came;
    }

    /// <summary>Everything is sent again: another program may have written on the screen.</summary>
    public void Repaint()
    {
        _view.Forget();
        _output.Repaint();
        _wake.Up();
    }

    /// <summary>Gives the terminal back, from whatever thread and even when the loop hangs. Does nothing the second time.</summary>
    public void GiveBack()
    {
        ((IDisposable)_output).Dispose();
        if (_mode is not null)
        {
            UnixTerminal.SetMode(_mode);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        App.End(_token);
        App.Dispose();
        _view.Dispose();
        GiveBack();
    }

    private SessionToken Begin()
    {
        App.Init();

        // .NET turns the pad's application mode on when it first touches the console.
        _output.Send(TerminalOutput.PlainKeys);
        App.Keyboard.KeyDown += TakeKey;
        App.Driver!.Paste += (_, text) => Press(new KeyPress(KeyKind.Paste, text));
        App.Driver.ClearedContents += (_, _) => _view.Forget();
        Compose();
        return App.Begin(_view)!;
    }

    private ConcurrentQueue<char>? Keys => (App.Driver!.GetInputProcessor() as AnsiInputProcessor)?.InputQueue;

    private void Compose()
    {
        System.Drawing.Rectangle screen = App.Driver!.Screen;
        _view.Compose(screen.Width, screen.Height, _options.Time.GetLocalNow());
        _output.CursorAt = _view.CursorAt;
    }

    // Every key ends here, so that no binding of the library's, or of a configuration file it reads, ever sees one.
    private void TakeKey(object? sender, Key key)
    {
        key.Handled = true;
        if (HostKeys.Leaves(key))
        {
            _left = true;
        }
        else if (HostKeys.Of(key) is { } press)
        {
            Press(press);
        }
    }

    private void Press(KeyPress key)
    {
        // Keys typed ahead of a screen that was left belong to nobody.
        if (!IsOver)
        {
            _desk.Press(key);
        }
    }
}
