namespace ProcRunner.Problems;

/// <summary>
/// Every code a <see cref="Problem"/> can carry: Y for the text of a file, H for head specs, P for procedures, F for
/// formulas, J for a procedure and a head spec that don't go together. A code, once given, never means anything else.
/// </summary>
public static class ProblemCodes
{
    /// <summary>All codes with what each means, in order. docs/problem-codes.md is written from this table.</summary>
    public static IReadOnlyList<(string Code, string Meaning)> All { get; } =
    [
        ("PR-Y01", "the file is larger than is read (1 MB)"),
        ("PR-Y02", "the file isn't UTF-8 text"),
        ("PR-Y03", "the file isn't well-formed YAML"),
        ("PR-Y04", "the file is nested too deep, has too many entries, or uses aliases, tags or anchors"),
        ("PR-Y05", "a key stands twice"),
        ("PR-Y06", "a key isn't known here"),
        ("PR-Y07", "a key is missing"),
        ("PR-Y08", "a value has the wrong shape (a list where a text is wanted, and so on)"),
        ("PR-Y09", "a value isn't one of those allowed here"),
        ("PR-Y10", "a number or a quantity can't be read"),
        ("PR-Y11", "a name is empty, too long or has characters a name can't have"),
        ("PR-Y12", "the file can't be opened"),
        ("PR-Y13", "a text is too long (500 characters)"),
        ("PR-H01", "a limit, figure, fit or window has no origin"),
        ("PR-H02", "a limit is upside down: low, aim and high are not in order"),
        ("PR-H03", "the two units of a limit don't agree"),
        ("PR-H04", "a limit's quantity is of the wrong kind"),
        ("PR-H05", "a press fit that can be loose"),
        ("PR-H06", "a fit's stated interference isn't what its limits give"),
        ("PR-H07", "a wear limit is tighter than the range when new"),
        ("PR-H08", "a limit says nothing: neither low nor high nor ask"),
        ("PR-H09", "a position kind isn't one of the head's"),
        ("PR-P01", "a name is used that nothing defines"),
        ("PR-P02", "two things have the same name"),
        ("PR-P03", "a step can't be reached"),
        ("PR-P04", "things depend on each other in a circle"),
        ("PR-P05", "a step says something that its kind has no use for, or lacks something its kind needs"),
        ("PR-P06", "a way on leads forward or to another position"),
        ("PR-P07", "a value is used before any step takes it"),
        ("PR-P08", "the procedure has no release, or something stands after it"),
        ("PR-P09", "a reading is taken but no sign-off covers it"),
        ("PR-P10", "a selection table has a gap or an overlap, so that a value has no answer or two"),
        ("PR-F01", "a formula can't be read"),
        ("PR-F02", "a formula's units don't balance"),
        ("PR-F03", "a formula uses a name or function that isn't known"),
        ("PR-F04", "a formula is too long or nested too deep"),
        ("PR-J01", "the head spec lacks a limit that the procedure works to"),
        ("PR-J02", "the head spec lacks a figure that the procedure asks for"),
        ("PR-J03", "the head spec doesn't say whether the head has a feature that the procedure asks about"),
        ("PR-J04", "a limit's quantity isn't the kind that the procedure measures"),
        ("PR-J05", "forbidden work is spelt almost, but not quite, as the procedure spells it"),
    ];
}
