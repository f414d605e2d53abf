using ProcRunner.Procedures;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Lines;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>What a step is for, how its numbers come about, and what every key does.</summary>
internal static class WhyText
{
    /// <summary>The keys of a run.</summary>
    public static IReadOnlyList<string> Keys { get; } =
    [
        "The keys (a number pad is enough)",
        "Enter: takes what is typed; alone it says done, or that the readout is set",
        "0-9 . - : a number; 1+17/32 is a mixed fraction; a unit may follow: 52 thou",
        "/ in an empty field: the menu, and back from it",
        "* or Backspace: rubs out; in an empty field it takes the last place back",
        "+ in an empty field: the next part of a long list",
        "Esc: one page back; what was recorded is kept",
        "Several places: one by one with Enter, or in one line with spaces",
        "A part: its number, Enter, its lot, Enter; - for no lot",
    ];

    /// <summary>All of it for a prompt.</summary>
    public static IReadOnlyList<string> Of(RunWork work, Prompt prompt)
    {
        List<string> lines = [$"{prompt.Step.FullName}, {prompt.Position}: {prompt.ToDo}", ""];
        if (prompt.Step.Say.Length > 0)
        {
            lines.Add(prompt.Step.Say);
        }

        lines.Add($"Why: {Matters(work, prompt)}");
        if (prompt.Target is { Working.Length: > 0 } target)
        {
            lines.Add($"The number: {target.Working} = {target.Show} on the readout");
        }

        foreach (
            WorkedValue worked in prompt.Awaits == Awaited.WayOn && prompt.Before is [.., var last] ? last.Worked : []
        )
        {
            lines.Add(LineWording.Worked(worked.Name, worked.Working, worked.Value));
        }

        foreach (NumberShown number in prompt.Numbers)
        {
            lines.Add(LineWording.Worked(number.Name, number.Working, number.Value));
        }

        foreach (Caution caution in prompt.Step.Cautions)
        {
            lines.Add($"{caution.Word}: {caution.Text}");
        }

        return [.. lines, "", .. Keys];
    }

    /// <summary>Why a step's result matters.</summary>
    public static string Matters(RunWork work, Prompt prompt)
    {
        if (prompt.Step.Why.Length > 0)
        {
            return prompt.Step.Why;
        }

        string why =
            prompt.Step.Taking is { } taking && work.Plan.TryCharacteristic(taking.Characteristic, out int index)
                ? work.Plan.Procedure.Characteristics[index].Why
                : "";
        return why.Length > 0 ? why
            : prompt.Step.Say.Length > 0 ? prompt.Step.Say
            : prompt.Step.Subject;
    }
}
