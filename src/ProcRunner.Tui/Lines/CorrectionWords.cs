using ProcRunner.Runs;

namespace ProcRunner.Tui.Lines;

/// <summary>A correction in words: what stood there, what stands there now, and why.</summary>
internal static class CorrectionWords
{
    /// <summary>The words, with the step's name.</summary>
    public static string Of(RunState state, CorrectedEntry correction) =>
        $"{state.Plan.NameOf(correction.At)}: it was {correction.Was}, it is {correction.Became}: {correction.Reason}";
}
