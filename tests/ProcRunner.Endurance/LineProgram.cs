using System.Diagnostics;
using System.Text;

namespace ProcRunner.Endurance;

/// <summary>The built program in line mode on the demo job, driven through its pipes.</summary>
internal sealed class LineProgram : IDisposable
{
    /// <summary>How long anything may take before it counts as hung.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    private readonly Process _process;
    private readonly Thread _reader;
    private readonly Task<string> _errors;
    private readonly List<string> _lines = [];

    /// <summary>Starts the program on a store.</summary>
    public LineProgram(string program, string store)
    {
        _process = Process.Start(
            new ProcessStartInfo(program, ["run", "DEMO", "--plain", "--store", store])
            {
                UseShellExecute = false,
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
                StandardInputEncoding = Utf8,
                StandardOutputEncoding = Utf8,
            }
        )!;
        _errors = _process.StandardError.ReadToEndAsync();
        _reader = new Thread(ReadLines) { IsBackground = true };
        _reader.Start();
    }

    /// <summary>The process.</summary>
    public int Id => _process.Id;

    /// <summary>Lines that have come so far.</summary>
    public int Count
    {
        get
        {
            lock (_lines)
            {
                return _lines.Count;
            }
        }
    }

    /// <summary>Gives lines to the program; false when it is there no more.</summary>
    public bool Send(params ReadOnlySpan<string> lines)
    {
        try
        {
            _process.StandardInput.Write(string.Concat(lines.ToArray().Select(line => line + "\n")));
            _process.StandardInput.Flush();
            return true;
        }
        catch (IOException)
        {
            return false;
        }
    }

    /// <summary>Waits for a line.</summary>
    /// <param name="from">The first line to look at.</param>
    /// <param name="isWanted">What is waited for.</param>
    /// <returns>The lines from the first up to the one wanted; null when the program ended first.</returns>
    /// <exception cref="TimeoutException">The program hangs.</exception>
    public IReadOnlyList<string>? WaitFor(int from, Predicate<string> isWanted)
    {
        Stopwatch waited = Stopwatch.StartNew();
        int at = from;
        lock (_lines)
        {
            while (true)
            {
                for (; at < _lines.Count; at++)
                {
                    if (isWanted(_lines[at]))
                    {
                        return _lines[from..(at + 1)];
                    }
                }

                if (!_reader.IsAlive)
                {
                    return null;
                }

                if (waited.Elapsed > Patience)
                {
                    throw new TimeoutException($"Nothing more after: {_lines.LastOrDefault()}");
                }

                Monitor.Wait(_lines, TimeSpan.FromMilliseconds(200));
            }
        }
    }

    /// <summary>Kills the program as the power switch would, kill -9; all its lines, those in the pipe too.</summary>
    public IReadOnlyList<string> Kill()
    {
        _process.Kill();
        return Lines();
    }

    /// <summary>Waits until the program ends by itself.</summary>
    public (int Status, IReadOnlyList<string> Lines, string Errors) End()
    {
        try
        {
            _process.StandardInput.Close();
        }
        catch (IOException)
        {
            // It ended before it took everything.
        }

        IReadOnlyList<string> lines = Lines();
        return (_process.ExitCode, lines, Errors);
    }

    /// <summary>What it said on standard error; to be asked for when it has ended.</summary>
    public string Errors => _errors.GetAwaiter().GetResult();

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
        }

        _process.WaitForExit();
        _reader.Join();
        _process.Dispose();
    }

    private List<string> Lines()
    {
        if (!_process.WaitForExit(Patience))
        {
            throw new TimeoutException("The program doesn't end.");
        }

        _reader.Join();
        return _lines;
    }

    private void ReadLines()
    {
        while (_process.StandardOutput.ReadLine() is { } line)
        {
            lock (_lines)
            {
                _lines.Add(line);
                Monitor.PulseAll(_lines);
            }
        }
    }
}
