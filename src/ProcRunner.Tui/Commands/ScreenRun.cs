using ProcRunner.Tui.Host;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Run;
using ProcRunner.Tui.Screens.Shop;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary>The full screen: the shop's list of heads, or one job.</summary>
internal static class ScreenRun
{
    /// <summary>Opens the screen, and stays until it is left.</summary>
    /// <param name="folder">The store's folder; null: where the platform keeps a program's data.</param>
    /// <param name="stamp">The job to begin with; null: the list.</param>
    /// <returns>The exit status.</returns>
    public static int Open(string? folder, string? stamp)
    {
        TerminalKind terminal = ScreenHost.Terminal(out string fault);
        if (fault.Length > 0)
        {
            return Say.Usage(fault, "Without one: procrunner run STAMP --plain, one entry a line.");
        }

        ScreenSettings settings = ScreenSettings.From(Path.Combine(Machine.DataFolder, "screen"));
        using ShopDoor door = new(folder, settings, (session, job) => RunScreen.Open(job, session))
        {
            Progress = new Progress(Machine.Time, Console.Error, "jobs read").Report,
        };
        (IReadOnlyList<Screen> screens, fault) = door.Start(stamp);
        return screens.Count == 0
            ? Say.Usage(fault, "")
            : ScreenHost.Run(
                new Desk([.. screens]) { Attendance = door, Time = Machine.Time },
                new HostOptions(terminal, Machine.Time, () => settings.Bell, () => settings.Colours)
            );
    }
}
