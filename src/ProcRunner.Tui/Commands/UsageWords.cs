namespace ProcRunner.Tui.Commands;

/// <summary>What the parser of the command line says is wrong, in words of this program.</summary>
internal static class UsageWords
{
    private const string Read = "Cannot parse argument '";
    private const string Option = "' for option '";
    private const string Type = "' as expected type '";

    /// <summary>The words for a message of the parser; one that isn't known stays as it is.</summary>
    public static string Of(string message)
    {
        int option = message.LastIndexOf(Option, StringComparison.Ordinal);
        int type = message.LastIndexOf(Type, StringComparison.Ordinal);
        if (!message.StartsWith(Read, StringComparison.Ordinal) || option < Read.Length || type < option)
        {
            return message;
        }

        string read = message[Read.Length..option];
        string name = message[(option + Option.Length)..type];
        string wanted =
            message.IndexOf("Int32", type, StringComparison.Ordinal) >= 0 ? "a whole number, of nine digits at most,"
            : message.IndexOf("Int64", type, StringComparison.Ordinal) >= 0
                ? "a whole number, of eighteen digits at most,"
            : "a number";
        return $"{name}: '{read}' was read; {wanted} is wanted.";
    }
}
