using ProcRunner.Tui.Host;

namespace ProcRunner.Tui.Tests.Host;

public sealed class TerminalKindTests
{
    [Theory]
    [InlineData("TERM=xterm-256color", ColourDepth.TwoFiftySix)]
    [InlineData("TERM=xterm", ColourDepth.Sixteen)]
    [InlineData("TERM=linux", ColourDepth.Sixteen)]
    [InlineData("TERM=xterm COLORTERM=truecolor", ColourDepth.TwoFiftySix)]
    [InlineData("TERM=vt220", ColourDepth.None)]
    [InlineData("TERM=xterm-mono", ColourDepth.None)]
    // https://no-color.org: "when present and not an empty string (regardless of its value)".
    [InlineData("TERM=xterm-256color NO_COLOR=0", ColourDepth.None)]
    [InlineData("TERM=xterm-256color NO_COLOR=", ColourDepth.TwoFiftySix)]
    internal void Colours_are_as_the_environment_says(string environment, ColourDepth depth)
    {
        Assert.Equal(depth, Read(environment, out string fault).Depth);
        Assert.Empty(fault);
    }

    // POSIX.1-2017, Base Definitions 8.2: LC_ALL before LC_CTYPE before LANG; an empty one counts as not set.
    [Theory]
    [InlineData("LANG=C.UTF-8", true)]
    [InlineData("LANG=de_DE.utf8", true)]
    [InlineData("LANG=de_DE.ISO-8859-1", false)]
    [InlineData("", false)]
    [InlineData("LC_ALL=C LANG=C.UTF-8", false)]
    [InlineData("LC_ALL= LC_CTYPE=C.UTF-8 LANG=C", true)]
    public void Pictures_are_in_ASCII_unless_the_locale_is_UTF_8(string environment, bool isUtf8) =>
        Assert.Equal(isUtf8, Read("TERM=xterm " + environment, out _).IsUtf8);

    [Theory]
    [InlineData("TERM=dumb")]
    [InlineData("TERM=")]
    [InlineData("")]
    public void A_terminal_that_cannot_place_text_is_refused(string environment)
    {
        Read(environment, out string fault);
        Assert.Contains("TERM", fault, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_no_terminal_is_refused()
    {
        TerminalKind.Read(_ => "xterm", hasTerminal: false, isWindows: false, out string fault);
        Assert.Contains("needs a terminal", fault, StringComparison.Ordinal);
    }

    [Fact]
    public void Windows_needs_no_TERM_and_shows_UTF_8()
    {
        TerminalKind kind = TerminalKind.Read(_ => null, hasTerminal: true, isWindows: true, out string fault);
        Assert.Equal(new TerminalKind(ColourDepth.TwoFiftySix, true), kind);
        Assert.Empty(fault);
    }

    private static TerminalKind Read(string environment, out string fault)
    {
        Dictionary<string, string> variables = environment
            .Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(pair => pair.Split('='))
            .ToDictionary(pair => pair[0], pair => pair[1], StringComparer.Ordinal);
        return TerminalKind.Read(variables.GetValueOrDefault, hasTerminal: true, isWindows: false, out fault);
    }
}
