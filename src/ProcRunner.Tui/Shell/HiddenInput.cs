using System.Text;

namespace ProcRunner.Tui.Shell;

/// <summary>Takes a PIN: at a terminal without showing it, from a pipe one a line. PINs never stand on a command line.</summary>
internal static class HiddenInput
{
    /// <summary>Asks; null at the end of the input.</summary>
    public static string? Ask(string prompt, TextWriter output)
    {
        output.Write(prompt);
        string? typed = Console.IsInputRedirected ? Console.In.ReadLine()?.Trim() : Typed();
        output.WriteLine();
        return typed;
    }

    /// <summary>Asks for a new PIN, at a terminal twice; null with what is wrong.</summary>
    public static (string? Pin, string Fault) AskNew(string whose, TextWriter output)
    {
        string? first = Ask($"New PIN of {whose}: ", output);
        if (first is null)
        {
            return (null, "A PIN is needed: type it when asked, or give it as a line on standard input.");
        }

        return Console.IsInputRedirected || Ask("Once more: ", output) == first
            ? (first, "")
            : (null, "The two PINs differ.");
    }

    private static string Typed()
    {
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

        return typed.ToString();
    }
}
