namespace ProcRunner.Endurance.Tests;

/// <summary>One system call as strace saw it.</summary>
/// <param name="Name">The call's name.</param>
/// <param name="Arguments">Its arguments as written, descriptors with the paths they stand for.</param>
/// <param name="Begin">Number of the line in which it began.</param>
/// <param name="End">Number of the line in which it returned.</param>
internal sealed record SystemCall(string Name, string Arguments, int Begin, int End)
{
    /// <summary>Reads strace's output (-f -y), calls that succeeded only; a call that another thread's cut in two is put together again.</summary>
    public static IReadOnlyList<SystemCall> ReadAll(string path)
    {
        List<SystemCall> calls = [];
        Dictionary<string, (string Text, int Begin)> unfinished = [];
        int number = 0;
        foreach (string line in File.ReadLines(path))
        {
            number++;
            int space = line.IndexOf(' ', StringComparison.Ordinal);
            string thread = line[..space];
            string text = line[space..].TrimStart();
            int cut = text.IndexOf(" <unfinished ...>", StringComparison.Ordinal);
            if (cut >= 0)
            {
                unfinished[thread] = (text[..cut], number);
                continue;
            }

            int begin = number;
            if (text.StartsWith("<... ", StringComparison.Ordinal) && unfinished.Remove(thread, out var first))
            {
                text = first.Text + text[(text.IndexOf("resumed>", StringComparison.Ordinal) + "resumed>".Length)..];
                begin = first.Begin;
            }

            int open = text.IndexOf('(', StringComparison.Ordinal);
            int close = text.LastIndexOf(") = ", StringComparison.Ordinal);
            if (open > 0 && close > open && text[(close + 4)..].TrimStart()[0] != '-')
            {
                calls.Add(new(text[..open], text[(open + 1)..close], begin, number));
            }
        }

        return calls;
    }
}
