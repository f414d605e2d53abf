namespace ProcRunner.Tui.Demo;

/// <summary>Lines to be entered in the demo shop, whose clock walks on with each of them.</summary>
internal sealed class WalkedLines(IReadOnlyList<string> lines, DemoClock clock) : TextReader
{
    private int _next;

    /// <inheritdoc/>
    public override string? ReadLine()
    {
        if (_next == lines.Count)
        {
            return null;
        }

        clock.Walk(lines[_next]);
        return lines[_next++];
    }
}
