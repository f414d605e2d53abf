using System.Text;

namespace ProcRunner.Tui.Lines;

/// <summary>Where lines come from: a person at a terminal, or a pipe.</summary>
internal sealed class LineInput(TextReader reader, bool isPiped, TextWriter output)
{
    /// <summary>True when nobody is there to answer.</summary>
    public bool IsPiped { get; } = isPiped;

    /// <summary>Number of the line read last, from 1.</summary>
    public int LineNumber { get; private set; }

    /// <summary>The next line; null at the end.</summary>
    public string? Next()
    {
        if (!IsPiped)
        {
            output.Write("> ");
        }

        string? line = reader.ReadLine();
        LineNumber += line is null ? 0 : 1;
        return line;
    }

    /// <summary>A PIN: never shown, never kept.</summary>
    public string Secret(string prompt)
    {
        output.Write(prompt);
        if (IsPiped || Console.IsInputRedirected)
        {
            output.WriteLine();
            return (Next() ?? "").Trim();
        }

        StringBuilder typed = new();
        while (Console.ReadKey(intercept: true) is { Key: not ConsoleKey.Enter } key)
        {
            if (key.Key == ConsoleKey.Backspace && typed.Length > 0)
            {
                typed.Length--;
            }
            else if (!char.IsControl(key.KeyChar))
            {
                typed.Append(key.KeyChar);
            }
        }

        output.WriteLine();
        return typed.ToString();
    }
}
