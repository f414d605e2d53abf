using System.CommandLine;

namespace ProcRunner.Tui.Commands;

/// <summary>The option for answers that scripts read.</summary>
internal static class JsonOption
{
    /// <summary>A new one for a verb.</summary>
    public static Option<bool> Create() => new("--json") { Description = "one line of JSON, for scripts" };
}
