namespace ProcRunner.Tui.Host;

/// <summary>What the environment says of the terminal.</summary>
/// <param name="Depth">Its colours.</param>
/// <param name="IsUtf8">True when it shows UTF-8.</param>
internal sealed record TerminalKind(ColourDepth Depth, bool IsUtf8)
{
    private static readonly string[] LocaleVariables = ["LC_ALL", "LC_CTYPE", "LANG"];
    private static readonly string[] Monochrome = ["vt100", "vt102", "vt220", "vt320", "vt420", "ansi-m"];

    /// <summary>Reads the environment; <paramref name="fault"/> says why no screen can be drawn, and is empty otherwise.</summary>
    /// <param name="variable">Gives an environment variable, or null.</param>
    /// <param name="hasTerminal">True when standard input and output are terminals.</param>
    /// <param name="isWindows">True on Windows, whose console needs no TERM and shows UTF-8.</param>
    /// <param name="fault">Why not.</param>
    public static TerminalKind Read(Func<string, string?> variable, bool hasTerminal, bool isWindows, out string fault)
    {
        string term = variable("TERM") ?? "";
        fault = FaultOf(term, hasTerminal, isWindows);
        return new(DepthOf(variable, term, isWindows), isWindows || SaysUtf8(variable));
    }

    private static string FaultOf(string term, bool hasTerminal, bool isWindows)
    {
        if (!hasTerminal)
        {
            return "The screen needs a terminal, and standard input or output isn't one.";
        }

        return !isWindows && term is "" or "dumb"
            ? $"The screen needs a terminal that can place text; TERM is \"{term}\"."
            : "";
    }

    private static ColourDepth DepthOf(Func<string, string?> variable, string term, bool isWindows)
    {
        // https://no-color.org: set and not empty, whatever it says.
        if (!string.IsNullOrEmpty(variable("NO_COLOR")))
        {
            return ColourDepth.None;
        }

        if (Monochrome.Contains(term) || term.EndsWith("-m", StringComparison.Ordinal) || term.Contains("-mono"))
        {
            return ColourDepth.None;
        }

        bool many = isWindows || term.Contains("256color") || !string.IsNullOrEmpty(variable("COLORTERM"));
        return many ? ColourDepth.TwoFiftySix : ColourDepth.Sixteen;
    }

    // The first of the three that is set decides: POSIX.1-2017, Base Definitions, 8.2.
    private static bool SaysUtf8(Func<string, string?> variable)
    {
        string locale = LocaleVariables
            .Select(name => variable(name) ?? "")
            .FirstOrDefault(value => value.Length > 0, "");
        return locale.Contains("utf-8", StringComparison.OrdinalIgnoreCase)
            || locale.Contains("utf8", StringComparison.OrdinalIgnoreCase);
    }
}
