namespace ProcRunner.Tui.Host;

/// <summary>How many colours the terminal has.</summary>
internal enum ColourDepth
{
    /// <summary>None: bold and reverse only.</summary>
    None,

    /// <summary>The sixteen of ECMA-48 and its bright ones.</summary>
    Sixteen,

    /// <summary>The xterm table of 256.</summary>
    TwoFiftySix,
}
