namespace ProcRunner.Store.Local;

/// <summary>What the world does to files, told from a programmer's mistake and put into words for an operator.</summary>
public static class DiskTrouble
{
    // errno(3) of Linux and macOS, which .NET keeps as the exception's HResult; and the Windows codes of the same.
    private static readonly int[] Held = [11, 35, unchecked((int)0x80070020), unchecked((int)0x80070021)];
    private static readonly int[] Full = [28, unchecked((int)0x80070070), unchecked((int)0x80070027)];
    private static readonly int[] OverQuota = [122, 69, unchecked((int)0x80070718)];
    private static readonly int[] ReadOnly = [30, unchecked((int)0x80070013)];
    private static readonly int[] Failing = [5, unchecked((int)0x8007045D), unchecked((int)0x80070017)];

    /// <summary>True for trouble with files.</summary>
    public static bool Is(Exception e) => e is IOException or UnauthorizedAccessException;

    /// <summary>True when a file can't be opened because somebody else has it open.</summary>
    public static bool IsHeld(Exception e) => e is IOException && Held.Contains(e.HResult);

    /// <summary>The cause, as a sentence.</summary>
    public static string InWords(Exception e) =>
        e switch
        {
            UnauthorizedAccessException => "This account isn't allowed to write there.",
            DirectoryNotFoundException or FileNotFoundException or DriveNotFoundException =>
                "The folder, or a file in it, is gone.",
            _ when Full.Contains(e.HResult) => "The disk is full.",
            _ when OverQuota.Contains(e.HResult) => "The space that this account may use on the disk is used up.",
            _ when ReadOnly.Contains(e.HResult) => "The disk is read-only.",
            _ when Failing.Contains(e.HResult) => "The disk reports an error: it may be failing.",
            _ => e.Message.EndsWith('.') ? e.Message : e.Message + ".",
        };
}
