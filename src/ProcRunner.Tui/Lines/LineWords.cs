namespace ProcRunner.Tui.Lines;

/// <summary>Every word of line mode. Anything else is an entry for the step that is asked.</summary>
internal static class LineWords
{
    public static readonly LineWord Help = new("?", "?", "what can be done now");
    public static readonly LineWord At = new(
        "@",
        "@ STEP POSITION",
        "asserts that the run is at this step; stops if it isn't"
    );
    public static readonly LineWord Remark = new("#", "# TEXT", "a remark in a file of entries; does nothing");
    public static readonly LineWord Go = new("go", "go STEP POSITION", "goes to another open step");
    public static readonly LineWord Lift = new("measure", "measure", "in a cut: lift and measure before the target");
    public static readonly LineWord Enough = new(
        "enough",
        "enough",
        "in a cut: end it within the window, short of the aim"
    );
    public static readonly LineWord Correct = new(
        "correct",
        "correct [STEP POSITION:] ENTRY because REASON",
        "puts another entry in place of the one just made, or of the last one at the step named; both stay in the trail"
    );
    public static readonly LineWord LeaveOut = new(
        "not for this head",
        "not for this head because REASON",
        "leaves the step out, where the procedure allows it"
    );
    public static readonly LineWord TakeBack = new(
        "take back",
        "take back STEP POSITION because REASON",
        "takes back that a step was left out: it is to be done; both stay in the trail"
    );
    public static readonly LineWord Sign = new(
        "sign",
        "sign [as PERSON] [pin PIN] [beside LEAD pin PIN]",
        "signs the stage or releases the head; the PIN is asked when it isn't given"
    );
    public static readonly LineWord Note = new("note", "note TEXT", "writes a note");
    public static readonly LineWord Hold = new("hold", "hold because REASON", "puts the job aside");
    public static readonly LineWord TakeUp = new("take up", "take up", "takes a held job up again");
    public static readonly LineWord HandOver = new("hand over to", "hand over to PERSON", "another person goes on");
    public static readonly LineWord HeadsTogether = new(
        "heads together",
        "heads together",
        "writes down that this head and the other one of the engine match and go out together"
    );
    public static readonly LineWord HeadsApart = new(
        "heads apart",
        "heads apart because REASON",
        "writes down that this head goes out although the other one differs or isn't known yet"
    );
    public static readonly LineWord Heads = new("heads", "heads", "the heads of the engine side by side");
    public static readonly LineWord Gauge = new("gauge", "gauge KIND = ID", "chooses the gauge for a kind of reading");
    public static readonly LineWord Limit = new(
        "limit",
        "limit NAME [at POSITION] [low L] [aim A] [high H] because REASON",
        "chooses a limit that the head spec leaves open"
    );
    public static readonly LineWord Changed = new("changed", "changed WHAT", "reports a change that voids something");
    public static readonly LineWord Why = new(
        "why",
        "why",
        "why this step matters, and how its numbers are worked out"
    );
    public static readonly LineWord Work = new(
        "work",
        "work [FUNCTION [NAME=VALUE ...]]",
        "works out one of the shop's calculations, with its steps; nothing is recorded"
    );
    public static readonly LineWord Quit = new("quit", "quit", "leaves; everything acknowledged is on disk");

    public static IReadOnlyList<LineWord> All { get; } =
    [
        Help,
        At,
        Remark,
        Go,
        Lift,
        Enough,
        Correct,
        LeaveOut,
        TakeBack,
        Sign,
        Note,
        Hold,
        TakeUp,
        HandOver,
        HeadsTogether,
        HeadsApart,
        Heads,
        Gauge,
        Limit,
        Changed,
        Why,
        Work,
        Quit,
    ];

    /// <summary>What follows a word in a line, or null when the line doesn't begin with it.</summary>
    public static string? After(LineWord word, string line)
    {
        if (!line.StartsWith(word.Word, StringComparison.OrdinalIgnoreCase))
        {
            return null;
        }

        string rest = line[word.Word.Length..];
        bool symbol = !char.IsLetter(word.Word[0]);
        return symbol || rest.Length == 0 || rest[0] == ' ' ? rest.Trim() : null;
    }

    /// <summary>Splits at the last " because "; the reason is empty when there is none.</summary>
    public static (string Before, string Reason) Because(string text)
    {
        const string Word = "because ";
        int at = text.StartsWith(Word, StringComparison.OrdinalIgnoreCase)
            ? 0
            : text.LastIndexOf(" " + Word, StringComparison.OrdinalIgnoreCase);
        if (at < 0)
        {
            return (text.Trim(), "");
        }

        int reason = at + Word.Length + (at == 0 && text[0] != ' ' ? 0 : 1);
        return (text[..at].Trim(), text[reason..].Trim());
    }
}
