using ProcRunner.Tui.Host;
using ProcRunner.Tui.Screens;
using Terminal.Gui.Drivers;

namespace ProcRunner.Tui.Tests.Host;

/// <summary>A session in memory: keys in as a terminal sends them, the screen out as text, and the bytes that were sent.</summary>
internal sealed class Bench : IDisposable
{
    private const char Escape = '\u001b';
    private readonly Wake _wake = new();

    public Bench(
        ColourDepth depth = ColourDepth.Sixteen,
        bool isUtf8 = true,
        bool ringsBell = true,
        string sample = "sample"
    )
    {
        Screen = new TryScreen { Sample = sample };
        Session = new HostSession(
            new Desk(Screen),
            new HostOptions(new TerminalKind(depth, isUtf8), Clock, () => ringsBell, () => UsesColours),
            _wake,
            () => { }
        );
        Size(80, 24);
    }

    public WallClock Clock { get; } = new();

    public bool UsesColours { get; set; } = true;

    public TryScreen Screen { get; }

    public HostSession Session { get; }

    /// <summary>What the last picture sent.</summary>
    public string Sent => Session.App.Driver!.GetOutput().GetLastOutput();

    /// <summary>The screen as text, without the spaces at line ends.</summary>
    public string[] Lines => [.. Session.App.Driver!.ToString()!.Split('\n').Select(line => line.TrimEnd())];

    public void Size(int width, int height)
    {
        Session.App.Driver!.SetScreenSize(width, height);
        Session.Turn();
        Session.Turn(); // the library lays out in the first and clears in the second
    }

    /// <summary>Bytes as the terminal sends them; &lt;ESC&gt; stands for itself.</summary>
    public void Send(string bytes)
    {
        PadKeys pad = new();
        string came = bytes.Replace("<ESC>", Escape.ToString());
        foreach (char character in pad.Read(came) + pad.Release())
        {
            ((AnsiInputProcessor)Session.App.Driver!.GetInputProcessor()).InputQueue.Enqueue(character);
        }

        Session.Turn();
        Clock.Pass(TimeSpan.FromMilliseconds(60));
        Session.Turn();
    }

    public void Dispose()
    {
        Session.Dispose();
        _wake.Dispose();
    }
}
