using ProcRunner.Text;

namespace ProcRunner.Tui.Host;

/// <summary>What is said when an error of the program's own ended the screen.</summary>
internal static class Fault
{
    /// <summary>That nothing is lost, and why.</summary>
    public const string AllOnDisk =
        "Everything that was acknowledged is on disk: start again, and the run stands at the same step.";

    // Enough to say where; more helps nobody at the machine.
    private const int MostFrames = 6;

    /// <summary>What happened and where.</summary>
    public static string InWords(Exception error)
    {
        string[] where = (error.StackTrace ?? "").Split('\n', StringSplitOptions.TrimEntries);
        return string.Join(
            Environment.NewLine,
            [
                $"An error of the program's own ended the screen: {error.GetType().Name}: {SafeText.Show(error.Message)}",
                .. where.Take(MostFrames).Select(frame => "  " + SafeText.Show(frame)),
                AllOnDisk,
            ]
        );
    }
}
