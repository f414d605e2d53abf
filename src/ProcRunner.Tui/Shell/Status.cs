namespace ProcRunner.Tui.Shell;

/// <summary>The exit statuses of the program.</summary>
internal static class Status
{
    /// <summary>Yes, or done.</summary>
    public const int Done = 0;

    /// <summary>The answer is no: refused, faults found, a trail that doesn't hold.</summary>
    public const int No = 1;

    /// <summary>Wrong usage or environment.</summary>
    public const int Usage = 2;
}
