using ProcRunner.Procedures;
using ProcRunner.Runs.Prompts;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>What to do, in a machinist's words and short enough for two metres.</summary>
internal static class Heading
{
    /// <summary>The words, the position at the end.</summary>
    public static string Of(Prompt prompt)
    {
        string where = prompt.At.Position == Runs.At.Head ? "" : $" at {prompt.Position}";
        string subject = prompt.Step.Subject;
        string taken = prompt.Step.Taking?.Characteristic ?? subject;
        return prompt.Awaits switch
        {
            Awaited.Readout => $"Cut{where} until the readout shows",
            Awaited.NumberSet => $"Cutter touching{where}: set the readout to",
            Awaited.Reading when prompt.Step.Work is StepWork.Cut => $"Lift, wipe, measure {taken}{where}",
            Awaited.Reading when prompt.Step.Work is StepWork.Zero => $"Touch off, then measure {taken}{where}",
            Awaited.Reading => $"Measure {taken}{where}",
            Awaited.Finding => $"Inspect {subject}{where}",
            Awaited.Choice => $"Decide {subject}{where}",
            Awaited.Part => $"Fit {subject}{where}",
            _ => $"{char.ToUpperInvariant(subject[0])}{subject[1..]}{where}",
        };
    }
}
