using System.Globalization;

namespace ProcRunner.Tui.Training;

/// <summary>A person's progress, drawn: for each time a lesson was taken what there was to mend and how long it took.</summary>
internal static class ProgressChart
{
    private const int MostFaults = 10;
    private const int MinutesOfOne = 2;

    /// <summary>A sign for each time: <c>#</c> clean, else how many things there were to mend, <c>+</c> from ten.</summary>
    public static string Signs(IEnumerable<DebriefBook.Line> lines) =>
        string.Concat(
            lines.Select(line =>
                line.ToMend switch
                {
                    0 => '#',
                    >= MostFaults => '+',
                    _ => (char)('0' + line.ToMend),
                }
            )
        );

    /// <summary>
    /// The chart: a row for each time, the oldest first, with a bar of what there was to mend and one of the minutes.
    /// </summary>
    /// <param name="lines">What is drawn.</param>
    /// <param name="width">Columns there are.</param>
    public static IEnumerable<string> Rows(IReadOnlyList<DebriefBook.Line> lines, int width)
    {
        int name = Math.Max("lesson".Length, lines.Select(line => line.Lesson.Length).DefaultIfEmpty(0).Max());
        yield return $"{"when", -10}  {"lesson".PadRight(name)}  caught  {"to mend", -MostFaults}  minutes";
        foreach (DebriefBook.Line line in lines)
        {
            string when = line.At.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            string caught = string.Create(CultureInfo.InvariantCulture, $"{line.Caught} of {line.Planted}");
            string mend = line.ToMend == 0 ? "clean" : new string('#', Math.Min(line.ToMend, MostFaults));
            string minutes = line.Minutes.ToString(CultureInfo.InvariantCulture);
            string head = $"{when}  {line.Lesson.PadRight(name)}  {caught, -6}  {mend, -MostFaults}  {minutes, 3} ";
            int bar = Math.Clamp((line.Minutes + MinutesOfOne - 1) / MinutesOfOne, 0, Math.Max(0, width - head.Length));
            yield return head + new string('=', bar);
        }
    }

    /// <summary>How far somebody has come, in a sentence.</summary>
    /// <param name="lines">The lessons taken.</param>
    /// <param name="lessons">How many lessons there are.</param>
    public static string Summary(IReadOnlyList<DebriefBook.Line> lines, int lessons)
    {
        int clean = lines.Where(line => line.ToMend == 0).Select(line => line.Lesson).Distinct().Count();
        return lines.Count == 0
            ? "No lesson taken yet."
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{Times(lines.Count)}, {clean} of {lessons} lessons clean at least once."
            );
    }

    private static string Times(int count) =>
        count == 1 ? "One lesson taken" : string.Create(CultureInfo.InvariantCulture, $"{count} lessons taken");
}
