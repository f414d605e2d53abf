using ProcRunner.Procedures;

namespace ProcRunner.Runs;

/// <summary>Words for where a limit comes from.</summary>
public static class OriginWords
{
    /// <summary>The words, as in files.</summary>
    public static string Of(Origin origin) =>
        origin switch
        {
            Origin.Maker => "maker",
            Origin.Standard => "standard",
            Origin.Shop => "shop",
            _ => "rule of thumb",
        };
}
