using System.Text.RegularExpressions;

namespace ProcRunner.Tui.Commands;

/// <summary>What the parser of the command line says is wrong, in words of this program.</summary>
internal static partial class UsageWords
{
    /// <summary>The words for a message of the parser; one that isn't known stays as it is.</summary>
    public static string Of(string message)
    {
        Match match = NotOfItsType().Match(message);
        if (!match.Success)
        {
            return message;
        }

        string type = match.Groups["type"].Value;
        string wanted =
            type.Contains("Int32", StringComparison.Ordinal) ? "a whole number, of nine digits at most,"
            : type.Contains("Int64", StringComparison.Ordinal) ? "a whole number, of eighteen digits at most,"
            : "a number";
        return $"{match.Groups["where"].Value}: '{match.Groups["read"].Value}' was read; {wanted} is wanted.";
    }

    [GeneratedRegex(
        @"^Cannot parse argument '(?<read>.*)' for (?:option|command) '(?<where>[^']*)' as expected type '(?:<>)?(?<type>[^']*)'\.$",
        RegexOptions.ExplicitCapture | RegexOptions.Singleline | RegexOptions.CultureInvariant
    )]
    private static partial Regex NotOfItsType();
}
