using ProcRunner.Quantities;
using ProcRunner.Runs.Prompts;
using ProcRunner.Shop;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>What a learner sees where a real head would be looked at: the gauge's face, or what an inspection shows.</summary>
internal static class GaugeView
{
    /// <summary>The lines; empty where there is nothing to be seen.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="prompt">The step.</param>
    /// <param name="given">How many places are typed already: the next one's face is shown.</param>
    public static IReadOnlyList<string> Of(LessonRun lesson, Prompt prompt, int given)
    {
        if (lesson.Sight(prompt) is { Count: > 0 } drawn)
        {
            return drawn;
        }

        if (lesson.Seen(prompt) is { Length: > 0 } seen)
        {
            return ["what you see:", .. Canvas.Wrap(seen, GaugeFace.Width)];
        }

        if (lesson.Told(prompt) is { Length: > 0 } told)
        {
            return ["what you see and hear:", .. Canvas.Wrap(told, GaugeFace.Width)];
        }

        IReadOnlyList<Quantity> shown = lesson.Shown(prompt);
        if (shown.Count == 0)
        {
            return [];
        }

        int place = Math.Min(given, shown.Count - 1);
        Gauge gauge = lesson.GaugeOf(prompt).Character.Gauge;
        string where =
            prompt.Places.Count > 1 ? prompt.Places[Math.Min(place, prompt.Places.Count - 1)]
            : gauge.Id == gauge.Kind ? "it says, no gauge kept:"
            : "the gauge shows";
        return [where, .. GaugeFace.Of(lesson.GaugeOf(prompt).Character, shown[place])];
    }

    /// <summary>The same for every place, below each other, for line mode.</summary>
    public static IEnumerable<string> Lines(LessonRun lesson, Prompt prompt) =>
        Enumerable
            .Range(0, Math.Max(1, prompt.Places.Count))
            .SelectMany(place => Of(lesson, prompt, place))
            .Select(line => $"    {line}");
}
