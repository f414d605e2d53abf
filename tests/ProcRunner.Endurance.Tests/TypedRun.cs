using System.Diagnostics;
using System.Globalization;
using ProcRunner.Testing;
using Xunit.Sdk;

namespace ProcRunner.Endurance.Tests;

/// <summary>The demo job in line mode with a person at a real terminal: a refusal doesn't end it. Its output is kept.</summary>
internal sealed class TypedRun : IDisposable
{
    private const string End = "ENDED ";
    private readonly TempFolder _folder = new();
    private readonly Tmux _terminal = new(100, 40);
    private readonly string _log;

    /// <summary>Starts it on a store.</summary>
    /// <param name="store">The store.</param>
    /// <param name="before">What stands before the program in the command: who runs it.</param>
    public TypedRun(string store, string before = "")
    {
        _log = _folder["log"];
        _terminal.Enter(
            $"({before} '{BuiltProgram.Path}' run DEMO --plain --store '{store}' 2>&1; echo {End}$?) | tee '{_log}'"
        );
    }

    /// <summary>Types a line.</summary>
    public void Enter(string text) => _terminal.Enter(text);

    /// <summary>How many lines of the output begin like this.</summary>
    public int Count(string begin) =>
        File.Exists(_log)
            ? File.ReadLines(_log).Count(l => l.TrimStart('>', ' ').StartsWith(begin, StringComparison.Ordinal))
            : 0;

    /// <summary>Waits until so many lines begin like this.</summary>
    public void WaitFor(string begin, int count = 1)
    {
        Stopwatch waited = Stopwatch.StartNew();
        while (Count(begin) < count)
        {
            if (waited.Elapsed > LineProgram.Patience)
            {
                throw new XunitException($"Not said in good time: {begin}\n{File.ReadAllText(_log)}");
            }

            Thread.Sleep(20);
        }
    }

    /// <summary>Leaves; the exit status.</summary>
    public int Quit()
    {
        Enter("quit");
        WaitFor(End);
        return int.Parse(File.ReadLines(_log).Last().Split(' ')[^1], CultureInfo.InvariantCulture);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _terminal.Dispose();
        _folder.Dispose();
    }
}
