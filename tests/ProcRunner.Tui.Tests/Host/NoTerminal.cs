using System.Runtime.CompilerServices;

namespace ProcRunner.Tui.Tests.Host;

/// <summary>Without this a test would take over the terminal that the tests are run from.</summary>
internal static class NoTerminal
{
    [ModuleInitializer]
    internal static void Set() => Environment.SetEnvironmentVariable("DisableRealDriverIO", "1");
}
