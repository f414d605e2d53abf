using ProcRunner.Testing;

namespace ProcRunner.EndToEnd.Tests.Screen;

/// <summary>The built program on a real terminal, in a data folder of its own.</summary>
internal sealed class ShopAtScreen : IDisposable
{
    private readonly TempFolder _data = new();
    private readonly bool _isGuest;

    /// <summary>A terminal; nothing runs yet.</summary>
    public ShopAtScreen(int columns = 80, int rows = 24, params string[] environment)
    {
        Tmux = new Tmux(columns, rows, [$"XDG_DATA_HOME={_data.Path}", .. environment]);
    }

    private ShopAtScreen(ShopAtScreen host)
    {
        (_data, _isGuest) = (host._data, true);
        Tmux = new Tmux(80, 24, $"XDG_DATA_HOME={_data.Path}");
    }

    public Tmux Tmux { get; }

    /// <summary>The entries of the demo job's trail, whole lines only.</summary>
    public string[] Trail
    {
        get
        {
            string? file = Directory.Exists(_data["procrunner"])
                ? Directory
                    .GetFiles(_data["procrunner"], "*.trail", SearchOption.AllDirectories)
                    .FirstOrDefault(path => Path.GetFileName(path) != "book.trail")
                : null;
            return file is null ? [] : File.ReadAllText(file).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        }
    }

    /// <summary>Another terminal on the same data.</summary>
    public ShopAtScreen Another() => new(this);

    /// <summary>Starts the program; the shell says its status when it ends.</summary>
    public void Start(string words = "", string before = "") =>
        Tmux.Enter(
            $"clear; stty -a > before; {before}{BuiltProgram.Executable} {words}; echo status $?; stty -a > after; echo over"
        );

    /// <summary>From an empty place to the demo job's first step.</summary>
    public void StartDemo()
    {
        Start("run DEMO");
        Tmux.WaitFor("CAUTION");
    }

    /// <summary>Keys of the pad; CR is Enter.</summary>
    public void Keys(string keys)
    {
        string[] lines = keys.Split('\r');
        for (int i = 0; i < lines.Length; i++)
        {
            if (lines[i].Length > 0)
            {
                Tmux.Type(lines[i]);
            }

            if (i < lines.Length - 1)
            {
                Tmux.Press("Enter");
            }
        }
    }

    /// <summary>Waits until the program ended, and holds that the terminal is as it was found.</summary>
    public string Ended(int status)
    {
        string screen = Tmux.WaitFor("\nover");
        Assert.Contains(FormattableString.Invariant($"\nstatus {status}\n"), "\n" + screen, StringComparison.Ordinal);
        Assert.Equal("alternate 0 cursor 1 pad 0 keys 0 mouse 0", Tmux.TerminalState);
        Assert.Equal(File.ReadAllText(Tmux.Home["before"]), File.ReadAllText(Tmux.Home["after"]));
        return screen;
    }

    /// <summary>Runs the program in line mode on the same data; its status.</summary>
    public int Line(string input, string words)
    {
        string file = Tmux.Home.Write("input", input);
        using System.Diagnostics.Process process = new();
        process.StartInfo = new(
            "sh",
            ["-c", $"exec {BuiltProgram.Executable} {words} < {file} > {Tmux.Home["output"]} 2>&1"]
        )
        {
            UseShellExecute = false,
            Environment = { ["XDG_DATA_HOME"] = _data.Path },
        };
        process.Start();
        process.WaitForExit();
        return process.ExitCode;
    }

    public void Dispose()
    {
        Tmux.Dispose();
        if (!_isGuest)
        {
            _data.Dispose();
        }
    }
}
