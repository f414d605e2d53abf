using System.Security.Cryptography;
using ProcRunner.Trail;
using ProcRunner.Tui.Demo;

namespace ProcRunner.Tui.Shell;

/// <summary>What the program takes from the machine: the clock, randomness, and where its data lives.</summary>
internal static class Machine
{
    /// <summary>The clock.</summary>
    public static TimeProvider Time { get; private set; } = TimeProvider.System;

    /// <summary>Goes by the demo shop's invented clock from here on. A real shop's trail never does: <c>run</c> sees to it.</summary>
    public static void GoBy(DemoClock clock) => Time = clock;

    /// <summary>Randomness for keys and ids.</summary>
    public static EntropySource Entropy { get; } = RandomNumberGenerator.Fill;

    /// <summary>Where the platform keeps a program's data: XDG_DATA_HOME on Linux, AppData on Windows.</summary>
    public static string DataFolder { get; } =
        Path.Combine(
            Environment.GetFolderPath(
                Environment.SpecialFolder.LocalApplicationData,
                Environment.SpecialFolderOption.DoNotVerify
            ),
            "procrunner"
        );

    /// <summary>Where a person keeps their own files.</summary>
    public static string HomeFolder =>
        Environment.GetFolderPath(Environment.SpecialFolder.UserProfile, Environment.SpecialFolderOption.DoNotVerify);

    /// <summary>The shop's store when none is named.</summary>
    public static string ShopFolder => Path.Combine(DataFolder, "shop");

    /// <summary>The demo shop's store when none is named.</summary>
    public static string DemoFolder => Path.Combine(DataFolder, "demo-shop");

    /// <summary>Where the practice room is.</summary>
    public static string PracticeFolder => Path.Combine(DataFolder, "practice-room");

    /// <summary>The procedures and head specs that come with the program.</summary>
    public static string ProceduresFolder => Path.Combine(AppContext.BaseDirectory, "procedures");
}
