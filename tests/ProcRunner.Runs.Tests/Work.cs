namespace ProcRunner.Runs.Tests;

/// <summary>Small invented procedures and heads, put together from the lines that a test is about.</summary>
internal static class Work
{
    /// <summary>A head with these limits, figures or forbidden work; four positions.</summary>
    public static string Head(string limits, string unit = "in", string angle = "0 deg", string rest = "") =>
        Lines(
            "head: test",
            "title: two cylinders (invented)",
            "revision: 1",
            "material: grey iron",
            $"unit: {unit}",
            $"positions: {{cylinders: 2, kinds: [I, E], guide-angle: {angle}}}",
            "limits:",
            Indented(limits.Length > 0 ? limits : "nothing: {high: 1, origin: shop}", 2),
            rest
        );

    /// <summary>A procedure of one stage that is signed and released.</summary>
    public static string Procedure(string readings, string steps, string settings = "", string rest = "") =>
        Lines(
            "procedure: test",
            "title: for a test (invented)",
            "revision: 1",
            "settings:",
            Indented(settings.Length > 0 ? settings : "unused: {is: 1 in, origin: shop}", 2),
            rest,
            "datums:",
            "  deck: {of: head, is: the deck}",
            "  set-up: {of: head, is: how it all stands}",
            "  guide: {of: position, is: the guide's axis}",
            "  seat: {of: position, is: the cone}",
            "  valve: {of: position, is: the valve}",
            "changes:",
            "  cutter edge: {moves: [set-up], why: another edge cuts at another height}",
            "  deck hit: {moves: [deck], why: the deck may have moved}",
            "  valves swapped: {moves: [valve everywhere], why: another valve sits elsewhere}",
            "readings:",
            Indented(readings, 2),
            "stages:",
            "- stage: work",
            "  steps:",
            Indented(steps, 2),
            "  - sign: measured",
            "  - sign: released",
            "    signed-by: lead"
        );

    /// <summary>One reading of each position with a limit of its own in the head's unit, no gauge.</summary>
    public static Rig OneReading(string limit, string unit = "in", string steps = "- measure: depth") =>
        new(
            Procedure("depth: {of: position, measured-in: length, why: it matters}", steps),
            Head($"depth: {limit}", unit)
        );

    private static string Lines(params string[] lines) => string.Join('\n', lines.Where(l => l.Length > 0)) + "\n";

    private static string Indented(string text, int by)
    {
        string[] lines = text.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n');
        return string.Join('\n', lines.Select(line => new string(' ', by) + line));
    }
}
