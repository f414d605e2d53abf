using ProcRunner.Procedures;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Lines;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>
/// The quiet lines under the number: what is left, the window, how the number came about, what it was before, with which
/// gauge, what comes next. Each has its own place, filled or not.
/// </summary>
internal static class InfoLines
{
    /// <summary>The lines with their labels, most needed first.</summary>
    public static IReadOnlyList<(string Label, string Text, Ink Ink)> Of(RunWork work, Prompt prompt)
    {
        List<(string, string, Ink)> lines = [];
        Add(lines, "recheck", prompt.Recheck, Ink.Mind);
        if (prompt is { Awaits: Awaited.Readout, Target: { } target })
        {
            string then = target.StopsShort ? "then lift, wipe, measure" : "then lift, wipe, measure: the last cut";
            Add(lines, "left", $"{target.Left}   {then}", Ink.Strong);
        }

        Add(lines, "limits", prompt.NoLimits.Length > 0 ? prompt.NoLimits : Window(prompt.Window), Ink.Plain);
        Add(lines, "worked", Working(prompt), Ink.Plain);
        Add(lines, "before", Before(work, prompt), Ink.Plain);
        Add(lines, "readout", prompt.Readout, Ink.Plain);
        Add(lines, "gauge", Gauge(work, prompt), Ink.Plain);
        Add(lines, "next", NextStep.Of(work, prompt.At), Ink.Quiet);
        return lines;
    }

    /// <summary>Every formula of the step with its numbers filled in.</summary>
    public static string Working(Prompt prompt) =>
        prompt.Target is { Working.Length: > 0 } target ? $"{target.Working} = {target.Show}"
        : prompt.Numbers.Count > 0 && prompt.Numbers[0] is { Value: not null } number
            ? $"{number.Name} = {number.Working}"
        : "";

    /// <summary>What is known of this value: as found, and the last.</summary>
    public static string Before(RunWork work, Prompt prompt)
    {
        if (prompt.Step.Taking is not { } taking || Known(work, prompt, taking) is not { } value)
        {
            return "";
        }

        string last = $"{value.Value}{(value.Stale ? $" (recheck: {value.Cause})" : "")}";
        return value.AsFound is { } found && found != value.Value ? $"{last}; as found {found}" : last;
    }

    private static ValueRecord? Known(RunWork work, Prompt prompt, Taking taking) =>
        work.State.Value(
            taking.Characteristic,
            work.Plan.IsOfHead(taking.Characteristic) ? At.Head : prompt.At.Position
        );

    private static string Window(Judgement window) =>
        window.Origin.Length == 0 || window is { Low: null, Aim: null, High: null } ? "" : LineWording.Window(window);

    private static string Gauge(RunWork work, Prompt prompt) =>
        prompt.Awaits != Awaited.Reading || prompt.Gauge.Length == 0 ? ""
        : work.Job.Shop.Gauges.TryGetValue(prompt.Gauge, out ProcRunner.Shop.Gauge? gauge) ? $"{gauge.Id}, {gauge.Name}"
        : prompt.Gauge;

    private static void Add(List<(string, string, Ink)> lines, string label, string text, Ink ink)
    {
        if (text.Length > 0)
        {
            lines.Add((label, text, ink));
        }
    }
}
