using ProcRunner.Runs;
using ProcRunner.Trail;
using ProcRunner.Tui.Jobs;

namespace ProcRunner.Tui.Tests.Lines;

/// <summary>The demo's file of entries run once to its end, with what each of its lines brought about.</summary>
internal sealed class DemoRun
{
    private static readonly Lazy<DemoRun> Made = new(() => new DemoRun());
    private readonly List<(IReadOnlyList<RunEvent> Events, Digest Digest)> _entries = [DemoBench.Shared.Opened];
    private readonly int[] _entriesBefore;

    private DemoRun()
    {
        string[] lines = DemoBench.EntryLines;
        _entriesBefore = new int[lines.Length + 2];
        JobRun job = DemoBench.Shared.Begin();
        using LineByLine input = new(lines, line => Look(job, line));
        using StringWriter output = new();
        Status = DemoBench.Run(job, input, output);
        Look(job, input.Line + 1);
        Output = output.ToString();
        Final = job.State;
    }

    public static DemoRun Shared => Made.Value;

    /// <summary>The exit status.</summary>
    public int Status { get; }

    /// <summary>What was printed.</summary>
    public string Output { get; }

    /// <summary>The run at its end.</summary>
    public RunState Final { get; }

    /// <summary>Numbers of the lines that took a reading, with it.</summary>
    public IEnumerable<(int Line, RunEvent.ReadingTaken Taken)> Readings
    {
        get
        {
            for (int line = 1; line < _entriesBefore.Length - 1; line++)
            {
                int end = Math.Max(_entriesBefore[line], _entriesBefore[line + 1]);
                foreach ((IReadOnlyList<RunEvent> events, _) in _entries.Take(_entriesBefore[line]..end))
                {
                    foreach (RunEvent.ReadingTaken taken in events.OfType<RunEvent.ReadingTaken>())
                    {
                        yield return (line, taken);
                    }
                }
            }
        }
    }

    /// <summary>The job as it stood before a line, from 1.</summary>
    public JobRun Before(int line) => DemoBench.Shared.After(_entries.Take(_entriesBefore[line]));

    private void Look(JobRun job, int line)
    {
        if (job.State.Sequence > _entries.Count)
        {
            _entries.Add((job.LastEvents, job.Last));
        }

        _entriesBefore[line] = _entries.Count;
    }

    // Told before each line is read, which is when the line before has been dealt with.
    private sealed class LineByLine(string[] lines, Action<int> before) : TextReader
    {
        public int Line { get; private set; }

        public override string? ReadLine()
        {
            before(Line + 1);
            return Line < lines.Length ? lines[Line++] : null;
        }
    }
}
