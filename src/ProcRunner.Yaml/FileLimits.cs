namespace ProcRunner.Yaml;

/// <summary>How large a file may be. All of these are checked before or while the text is parsed, never after.</summary>
public static class FileLimits
{
    /// <summary>Most bytes of a file.</summary>
    public const int Bytes = 1_000_000;

    /// <summary>Most lists and maps inside each other.</summary>
    public const int Depth = 64;

    /// <summary>Most texts, lists and maps together.</summary>
    public const int Nodes = 50_000;

    /// <summary>Most characters of one text.</summary>
    public const int TextLength = 500;

    /// <summary>Most characters of a name.</summary>
    public const int NameLength = 60;
}
