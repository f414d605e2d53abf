using System.Diagnostics;
using System.Globalization;

namespace ProcRunner.Testing;

/// <summary>Signals to a program that a test started.</summary>
public static class Signal
{
    /// <summary>Sends one: <c>-TERM</c>, <c>-KILL</c>.</summary>
    public static void Send(string signal, int processId)
    {
        using Process kill = Process.Start("kill", [signal, processId.ToString(CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
    }
}
