using ProcRunner.Lessons;
using ProcRunner.Practice.Heads;

namespace ProcRunner.Tui.Training;

/// <summary>What an eye sees of a practice head, drawn, so that the learner judges it: blue on a face, a neck under a glass.</summary>
internal static class SightView
{
    private const int Cells = 25;
    private const string Contact = "contact";

    /// <summary>The lines; empty where a condition has no drawing.</summary>
    /// <param name="head">The head.</param>
    /// <param name="bound">The inspection.</param>
    /// <param name="position">Where; -1: the head.</param>
    public static IReadOnlyList<string> Of(PracticeHead head, BoundFinding bound, int position) =>
        bound.Seen == Contact ? Blue(head, position) : SightPictures.Of(bound.Seen, head.Condition(bound.Of, position));

    // To scale: the face from its outer edge to its inner one, and where the seat has taken the blue off.
    private static string[] Blue(PracticeHead head, int position)
    {
        double Of(string name) => head[Truths.Find(name)!, position];
        double outside = Of("face outside");
        double inside = Of("face inside");
        double CellOf(double diameter) => (outside - diameter) / (outside - inside) * Cells;
        double from = CellOf(Of("seat outside"));
        double to = CellOf(Of("seat inside"));
        string band = string.Concat(
            Enumerable.Range(0, Cells).Select(cell => cell + 0.5 >= from && cell + 0.5 <= to ? '#' : '.')
        );
        return
        [
            "blue on the valve's face",
            "# where the seat touched",
            $"|{band}|",
            $"|{band}|",
            "outer              stem's",
            "edge         ^       side",
            "           middle",
        ];
    }
}
