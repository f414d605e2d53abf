using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Shop;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Lines;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>
/// The quiet lines under the number: what is left, the window, how the number came about, what it was before, with which
/// gauge.
/// </summary>
internal static class InfoLines
{
    /// <summary>The lines with their labels, most needed first; what comes next isn't among them.</summary>
    public static IReadOnlyList<(string Label, string Text, Ink Ink)> Of(RunWork work, Prompt prompt)
    {
        List<(string, string, Ink)> lines = [];
        Add(lines, "recheck", prompt.Recheck, Ink.Mind);
        bool large = prompt is { Awaits: Awaited.Done or Awaited.Part, Numbers.Count: > 0 };
        Add(lines, "how", large ? prompt.Step.Say : "", Ink.Plain);
        if (large)
        {
            foreach (NumberShown number in prompt.Numbers.Skip(1))
            {
                Add(lines, "and", $"{number.Name} {number.Value?.ToString() ?? number.Working}", Ink.Strong);
            }
        }
        else
        {
            // Beside a window or a choice what isn't known is no help.
            IEnumerable<string> known = prompt
                .Numbers.Where(n => n.Value is not null)
                .Select(n => $"{n.Name} {n.Value}");
            Add(lines, prompt.Awaits == Awaited.Choice ? "found" : "at", string.Join(", ", known), Ink.Strong);
        }

        Add(lines, "limits", prompt.NoLimits.Length > 0 ? Missing(work, prompt) : Window(prompt.Window), Ink.Plain);
        Add(lines, "worked", Working(prompt), Ink.Plain);
        Add(lines, "before", Before(work, prompt), Ink.Plain);
        Add(lines, "readout", prompt.Awaits == Awaited.NumberSet ? prompt.Readout : "", Ink.Plain);
        Add(lines, "gauge", Gauge(work, prompt), Ink.Plain);
        return lines;
    }

    /// <summary>How far the tool still goes, and what then; empty where nothing is cut.</summary>
    public static string Left(Prompt prompt, Readout? readout)
    {
        if (prompt is not { Awaits: Awaited.Readout, Target: { } target } || readout is null)
        {
            return "";
        }

        Quantity left = target.Left.TryConvert(readout.Unit, readout.Step.Scale, Rounding.Nearest, out Quantity rounded)
            ? rounded
            : target.Left;
        return $"left {left}, then lift, wipe, measure";
    }

    /// <summary>Every formula of the step with its numbers filled in.</summary>
    public static string Working(Prompt prompt) =>
        prompt is { Awaits: Awaited.Readout, Target: { Working.Length: > 0 } target }
            ? Bare($"{target.Working}; readout {target.Show}", target.Show.Unit)
        : prompt is { Awaits: Awaited.Done, Numbers.Count: > 0 } && prompt.Numbers[0] is { Value: not null } number
            ? $"{number.Name} = {number.Working}"
        : "";

    /// <summary>What is known of this value: as found, and the last.</summary>
    public static string Before(RunWork work, Prompt prompt)
    {
        if (prompt.Step.Taking is not { } taking || Known(work, prompt, taking) is not { } value)
        {
            return "";
        }

        string last =
            $"{value.Value}{(value.Stale && value.Cause != prompt.Recheck ? $" (recheck: {value.Cause})" : "")}";
        return value.AsFound is { } found && found != value.Value ? $"{last}; as found {found}" : last;
    }

    private static ValueRecord? Known(RunWork work, Prompt prompt, Taking taking) =>
        work.State.Value(
            taking.Characteristic,
            work.Plan.IsOfHead(taking.Characteristic) ? At.Head : prompt.At.Position
        );

    private static string Missing(RunWork work, Prompt prompt) =>
        LimitPages.Open(work).Count > 0
            ? $"{prompt.NoLimits}; / menu, limit, to choose one that is left open"
            : prompt.NoLimits;

    // One unit at the end says it for all three.
    private static string Window(Judgement window)
    {
        if (window.Origin.Length == 0 || (window.Low ?? window.High ?? window.Aim) is not { } one)
        {
            return "";
        }

        return $"{Bare(LineWording.Window(window with { Origin = "" })[..^3], one.Unit)} {one.Unit}  {window.Origin}";
    }

    private static string Bare(string text, Unit unit) =>
        unit.Symbol.Length == 0
            ? text
            : string.Join(
                    ' ',
                    text.Split(' ')
                        .Select(word =>
                            word == unit.Symbol ? ""
                            : word.Length == unit.Symbol.Length + 1
                            && word.StartsWith(unit.Symbol, StringComparison.Ordinal)
                            && word[^1] is ',' or ';'
                                ? word[^1..]
                            : word
                        )
                        .Where(word => word.Length > 0)
                )
                .Replace(" ;", ";", StringComparison.Ordinal)
                .Replace(" ,", ",", StringComparison.Ordinal);

    private static string Gauge(RunWork work, Prompt prompt) =>
        prompt.Awaits != Awaited.Reading || prompt.Gauge.Length == 0 ? ""
        : work.Job.Shop.Gauges.TryGetValue(prompt.Gauge, out Gauge? gauge) ? $"{gauge.Id}, {gauge.Name}"
        : prompt.Gauge;

    private static void Add(List<(string, string, Ink)> lines, string label, string text, Ink ink)
    {
        if (text.Length > 0)
        {
            lines.Add((label, text, ink));
        }
    }
}
