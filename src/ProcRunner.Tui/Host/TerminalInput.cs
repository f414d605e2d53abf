using System.Collections.Concurrent;
using System.Text;
using Terminal.Gui.Drivers;

namespace ProcRunner.Tui.Host;

/// <summary>
/// Keys from the terminal. Terminal.Gui's own input looks every 20 ms; this one sleeps in the system until something comes, and
/// wakes the loop at once, so that a key is seen sooner and waiting costs nothing. What is a key stays the library's to say.
/// </summary>
internal sealed class TerminalInput(Wake wake, Action gone) : AnsiInput, IInput<char>
{
    // How long the end of the program may wait for this thread, and how long half a sequence is held.
    private static readonly TimeSpan Turn = TimeSpan.FromMilliseconds(50);

    private readonly PadKeys _pad = new();
    private readonly Decoder _decoder = Encoding.UTF8.GetDecoder();
    private ConcurrentQueue<char>? _queue;

    /// <inheritdoc/>
    void IInput<char>.Initialize(ConcurrentQueue<char> inputQueue) => _queue = inputQueue;

    /// <inheritdoc/>
    void IInput<char>.Run(CancellationToken runCancellationToken)
    {
        if (!IsAttachedToTerminal)
        {
            runCancellationToken.WaitHandle.WaitOne();
        }
        else if (OperatingSystem.IsWindows())
        {
            RunOnWindows(runCancellationToken);
        }
        else
        {
            RunOnUnix(runCancellationToken);
        }
    }

    private void RunOnUnix(CancellationToken stop)
    {
        byte[] bytes = new byte[4096];
        char[] characters = new char[4096];
        while (!stop.IsCancellationRequested)
        {
            if (!UnixTerminal.WaitForInput(Turn))
            {
                Give(_pad.Release());
                continue;
            }

            int count = UnixTerminal.Read(bytes);
            if (count == 0)
            {
                gone();
                return;
            }

            if (count > 0)
            {
                // A character may be cut in two where one read ends and the next begins: the decoder keeps the first half.
                Give(_pad.Read(characters.AsSpan(0, _decoder.GetChars(bytes, 0, count, characters, 0))));
            }
        }
    }

    private void RunOnWindows(CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            if (Peek())
            {
                Give(_pad.Read([.. Read()]));
            }
            else
            {
                Give(_pad.Release());
                stop.WaitHandle.WaitOne(TimeSpan.FromMilliseconds(10));
            }
        }
    }

    private void Give(string text)
    {
        foreach (char character in text)
        {
            _queue!.Enqueue(character);
        }

        if (text.Length > 0)
        {
            wake.Up();
        }
    }
}
