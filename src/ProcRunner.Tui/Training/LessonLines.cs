using ProcRunner.People;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Lines;
using ProcRunner.Tui.Screens.Run;

namespace ProcRunner.Tui.Training;

/// <summary>A lesson in line mode: faces below the prompt, the coach, and the tool fed turn by turn.</summary>
/// <param name="lesson">The lesson.</param>
internal sealed class LessonLines(LessonRun lesson)
{
    /// <summary>One turn of the fast feed, and of the slow one; several may stand in a line.</summary>
    private const string Fast = "down";
    private const string Slow = "+";

    /// <summary>What was entered at this position, as the menu has it on the screens.</summary>
    private const string History = "history";

    /// <summary>A lesson's own words, for help.</summary>
    public static IReadOnlyList<LineWord> Words { get; } =
    [
        new(Fast, $"{Fast}, {Slow}, several in a line", "feeds the tool: fast, or a little; the readout is told"),
        new(History, History, "what was entered at this position"),
    ];

    // Looking, not walking away from what was cut; to leave is no harm, the tool is found where it was.
    private static readonly LineWord[] Looks =
    [
        LineWords.Help,
        LineWords.At,
        LineWords.Why,
        LineWords.Work,
        LineWords.Note,
    ];

    /// <summary>What is said before the first prompt.</summary>
    public string Opening =>
        $"PRACTICE. {lesson.Lesson.Title} (invented). At a cut {Fast} feeds the tool fast, {Slow} a little, several in a line; "
        + $"then type what the readout shows. A number typed with nothing fed is where the tool stopped. {History} tells what was entered at this position, why asks the coach.";

    /// <summary>What stands below a prompt: what the coach still has to say, the face of the gauge, the readout.</summary>
    public IEnumerable<string> Beside(Prompt prompt) =>
        [.. Said(lesson.TakeRemarks()), .. GaugeView.Lines(lesson, prompt), .. Readout(prompt), .. Pins(prompt)];

    /// <summary>What the coach says when asked.</summary>
    public IEnumerable<string> Hint(Prompt prompt) =>
        lesson.Coach == CoachMode.Off ? [] : Said(Coach.Hint(lesson, prompt).Skip(1));

    /// <summary>What there is to say once the lesson is over; null while it isn't.</summary>
    public IEnumerable<string>? Ending() =>
        lesson.IsOver
            ?
            [
                .. Said(lesson.TakeRemarks()),
                "",
                "LESSON OVER",
                .. lesson.Close().Lines(lesson.Job.State),
                $"To be learned here: {lesson.Lesson.Learn}.",
                "",
                .. ProgressChart.Rows(lesson.Times(), 78),
            ]
            : null;

    /// <summary>A line that is the lesson's own: turns of the feed, or whatever has to wait for the tool to be out of the metal.</summary>
    public OwnLine? Own(string text, Prompt prompt)
    {
        if (text.Equals(History, StringComparison.OrdinalIgnoreCase))
        {
            RunWork work = new(lesson.Job) { Lesson = lesson };
            return new OwnLine("", [.. HistoryText.Of(work, prompt.At.Position).Select(line => $"    {line}")]);
        }

        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (lesson.ReadoutOf(prompt) is not null && words.All(word => word is Fast or Slow))
        {
            foreach (string word in words)
            {
                lesson.Feed(prompt, isCoarse: word == Fast);
            }

            return new OwnLine("", [.. Readout(prompt)]);
        }

        // The last entry of the run is somebody else's now and then.
        bool isTheirs = lesson.Job.State.LastAt is { } last && lesson.Others.Does(last);
        if (
            isTheirs
            && LineWords.After(LineWords.Correct, text) is { } entry
            && !entry.Contains(':', StringComparison.Ordinal)
        )
        {
            return new OwnLine(
                $"The entry made last is somebody else's. Say which is meant: {LineWords.Correct.Form}",
                []
            );
        }

        if (!lesson.IsInTheMetal(prompt) || Looks.Any(word => LineWords.After(word, text) is not null))
        {
            return null;
        }

        bool isNumber = char.IsAsciiDigit(text[0]) || text[0] is '.' or '-';
        string why = isNumber ? lesson.Stop(prompt, text) : RunMenu.InTheMetal;
        return why.Length > 0 ? new OwnLine(why, []) : null;
    }

    // Who is to sign finds the PIN here as on the screens.
    private IEnumerable<string> Pins(Prompt prompt)
    {
        if (prompt.Awaits is Awaited.Signature or Awaited.WayOn)
        {
            IEnumerable<string> pins = lesson
                .Job.Shop.People.Values.Where(p =>
                    p.RetiredAt is null && (p.Role == Role.Lead || p.Id == lesson.Job.Person)
                )
                .Select(p => $"{p.Id} ({RoleWord.Of(p.Role)}) {PracticeDoor.PinOf(p.Id)}");
            yield return $"    PINs in practice, worth nothing: {string.Join(", ", pins)}";
        }
    }

    private IEnumerable<string> Readout(Prompt prompt) =>
        lesson.ReadoutOf(prompt) is { } shows ? [$"    the readout shows {shows}"] : [];

    private static IEnumerable<string> Said(IEnumerable<string> lines) => lines.Select(line => $"coach: {line}");
}
