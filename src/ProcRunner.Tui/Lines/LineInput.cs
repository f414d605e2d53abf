using ProcRunner.Tui.Shell;

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
        if (IsPiped || Console.IsInputRedirected)
        {
            output.WriteLine(prompt);
            return (Next() ?? "").Trim();
        }

        return HiddenInput.Ask(prompt, output) ?? "";
    }
}
