using System.Diagnostics;
using System.Globalization;
using System.Runtime.CompilerServices;
using Xunit.Sdk;

namespace ProcRunner.Testing;

/// <summary>
/// A program on a real terminal: tmux gives it one, presses keys and reads the screen. Each has a server of its own, gone when
/// disposed.
/// </summary>
public sealed class Tmux : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    private readonly string _server = $"procrunner-{Guid.NewGuid():N}";
    private readonly TempFolder _folder = new();

    /// <summary>A shell in a home of its own; what is typed before it is ready waits for it.</summary>
    /// <param name="columns">Columns of the window.</param>
    /// <param name="rows">Rows of the window.</param>
    /// <param name="environment">More environment, as <c>NAME=VALUE</c>.</param>
    /// <exception cref="XunitException">tmux isn't installed.</exception>
    public Tmux(int columns, int rows, params ReadOnlySpan<string> environment)
    {
        List<string> words = ["new-session", "-d", "-c", _folder.Path, "-x", Number(columns), "-y", Number(rows)];
        string[] usual = ["LC_ALL=C.UTF-8", "TERM=screen-256color", "DisableRealDriverIO=", $"HOME={_folder.Path}"];
        foreach (string pair in (ReadOnlySpan<string>)[.. usual, .. environment])
        {
            words.AddRange(["-e", pair]);
        }

        Do([.. words, "sh"]);
    }

    /// <summary>The shell's home: an empty folder.</summary>
    public TempFolder Home => _folder;

    /// <summary>The screen as text.</summary>
    public string Screen => Do("capture-pane", "-p");

    /// <summary>The screen with its colours, as control sequences.</summary>
    public string ColouredScreen => Do("capture-pane", "-p", "-e");

    /// <summary>What the terminal stands in: alternate screen, cursor, pad and cursor keys, mouse, mode of the line.</summary>
    public string TerminalState =>
        Do(
                "display-message",
                "-p",
                "alternate #{alternate_on} cursor #{cursor_flag} pad #{keypad_flag} keys #{keypad_cursor_flag} mouse #{mouse_any_flag}"
            )
            .Trim();

    /// <summary>Bells that rang and weren't looked at yet: 0 or 1.</summary>
    public bool BellRang => Do("display-message", "-p", "#{window_bell_flag}").Trim() == "1";

    /// <summary>Types text, as if key by key.</summary>
    public void Type(string text) => Do("send-keys", "-l", "--", text);

    /// <summary>Presses a key by tmux's name for it: Enter, Escape, BSpace, C-q.</summary>
    public void Press(params ReadOnlySpan<string> keys) => Do(["send-keys", .. keys]);

    /// <summary>Types a line and Enter.</summary>
    public void Enter(string text = "")
    {
        if (text.Length > 0)
        {
            Type(text);
        }

        Press("Enter");
    }

    /// <summary>Sends bytes as a terminal would, in hexadecimal.</summary>
    public void SendBytes(params ReadOnlySpan<string> hex) => Do(["send-keys", "-H", .. hex]);

    /// <summary>Pastes text, bracketed if the program asked for that.</summary>
    public void Paste(string text)
    {
        Do("set-buffer", "--", text);
        Do("paste-buffer", "-p");
    }

    /// <summary>Changes the window's size.</summary>
    public void Resize(int columns, int rows) => Do("resize-window", "-x", Number(columns), "-y", Number(rows));

    /// <summary>The id of the program that the shell runs.</summary>
    public int ProgramId()
    {
        string shell = Do("display-message", "-p", "#{pane_pid}").Trim();
        string child = File.ReadAllText($"/proc/{shell}/task/{shell}/children").Trim();
        return int.Parse(child, CultureInfo.InvariantCulture);
    }

    /// <summary>Waits until a text is on the screen, and gives the screen.</summary>
    public string WaitFor(string text) => WaitUntil(screen => screen.Contains(text, StringComparison.Ordinal), text);

    /// <summary>Waits until the screen is as wanted, and gives it.</summary>
    public string WaitUntil(Func<string, bool> isThere, [CallerArgumentExpression(nameof(isThere))] string what = "")
    {
        Stopwatch waited = Stopwatch.StartNew();
        string screen = Screen;
        while (!isThere(screen))
        {
            if (waited.Elapsed > Patience)
            {
                throw new XunitException($"Not on the screen in good time: {what}\n{screen}");
            }

            Thread.Sleep(20);
            screen = Screen;
        }

        return screen;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        // What runs is hung up, and may yet write: its folders are waited for.
        string shell = Do("display-message", "-p", "#{pane_pid}").Trim();
        string[] programs = File.ReadAllText($"/proc/{shell}/task/{shell}/children")
            .Split(' ', StringSplitOptions.TrimEntries);
        Do("kill-server");
        Stopwatch waited = Stopwatch.StartNew();
        while (waited.Elapsed < Patience && programs.Any(id => id.Length > 0 && Directory.Exists($"/proc/{id}")))
        {
            Thread.Sleep(20);
        }

        _folder.Dispose();
    }

    private string Do(params ReadOnlySpan<string> words)
    {
        ProcessStartInfo start = new("tmux")
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        foreach (string word in (ReadOnlySpan<string>)["-L", _server, "-f", "/dev/null", "-u", .. words])
        {
            start.ArgumentList.Add(word);
        }

        try
        {
            using Process tmux = Process.Start(start)!;
            Task<string> fault = tmux.StandardError.ReadToEndAsync();
            string said = tmux.StandardOutput.ReadToEnd();
            tmux.WaitForExit();
            return tmux.ExitCode == 0
                ? said
                : throw new XunitException($"tmux {string.Join(' ', words.ToArray())}: {fault.Result}");
        }
        catch (System.ComponentModel.Win32Exception e)
        {
            throw new XunitException("tmux is needed by this test and isn't installed: apt-get install tmux", e);
        }
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
