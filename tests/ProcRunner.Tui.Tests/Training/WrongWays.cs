using ProcRunner.Quantities;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Tests.Training;

/// <summary>How each lesson goes wrong by nature, and what its debrief has to say of it.</summary>
internal static class WrongWays
{
    /// <summary>A wrong way.</summary>
    /// <param name="Lesson">The lesson's name.</param>
    /// <param name="Way">What is done wrong, in words.</param>
    /// <param name="Answer">What is answered otherwise; null where it is answered rightly.</param>
    /// <param name="Said">What the debrief says of it.</param>
    public sealed record Wrong(string Lesson, string Way, Func<LessonRun, Prompt, string?> Answer, string Said);

    public static IReadOnlyList<Wrong> All { get; } =
    [
        new("reading gauges", "a sleeve line too many", Typed("teardown / deck thickness", 0.025m), "a whole turn off"),
        new("reading gauges", "read to the thousandth", Rounded("teardown / deck thickness"), "without its last digit"),
        new(
            "reading gauges",
            "a turn of the dial too many",
            Typed("teardown / deepest pit", 0.0025m),
            "misread: teardown / deepest pit"
        ),
        new("a used deck", "conceded", Way("teardown / deck thickness", "concession"), "missed: the casting is below"),
        new(
            "a used deck",
            "typed as it should be",
            Typed("teardown / deck thickness", 0.025m),
            "missed: the casting is below"
        ),
        new("valves", "refaced", Chosen("teardown / valve", "reface"), "missed: a nicked valve"),
        new("valves", "kept", Chosen("teardown / valve", "keep"), "missed: a nicked valve"),
        new("springs", "kept for a shim", Chosen("teardown / spring", "keep"), "missed: the spring is well below"),
        new(
            "springs",
            "load misread",
            Typed("teardown / spring load closed", 6),
            "misread: teardown / spring load closed"
        ),
        new("a guide", "conceded", Way("guide replacement / guide outside", "concession"), "missed: the new guide"),
        new("a guide", "given up", Way("guide replacement / guide outside", "scrap"), "missed: the new guide"),
        new("a seat at 2I", "cut on without measuring", TooDeep, "cut too deep"),
        new(
            "a seat at 2I",
            "readout believed, not the gauge",
            Typed("seat cut / recession", 0.0012m),
            "misread: seat cut / recession"
        ),
        new("to the aim", "the difference cut twice", TooDeep, "cut too deep"),
        new(
            "to the aim",
            "readout believed, not the gauge",
            Typed("seat cut / recession", 0.0012m),
            "misread: seat cut / recession"
        ),
        new(
            "runout",
            "conceded",
            Way("seat cut / seat runout", "concession"),
            "missed: the seat was cut on a bent pilot"
        ),
        new("runout", "given up", Way("seat cut / seat runout", "scrap"), "missed: the seat was cut on a bent pilot"),
        new("vacuum", "typed as it should be", Held("seat cut / seat vacuum"), "missed: dirt under the valve"),
        new("seats", "kept", Chosen("teardown / seat", "keep"), "missed: the insert was found loose"),
        new(
            "seats",
            "taken for a seat without one",
            Chosen("teardown / seat", "insert"),
            "missed: the insert was found loose"
        ),
        new("a valve at 4I", "refaced", Chosen("teardown / valve", "reface"), "missed: the stem is worn"),
        new("a valve at 4I", "kept", Chosen("teardown / valve", "keep"), "missed: the stem is worn"),
        new(
            "before the skim",
            "conceded",
            Way("surface / deck range", "concession"),
            "missed: the deck needs more off"
        ),
        new("before the skim", "given up", Way("surface / deck range", "scrap"), "missed: the deck needs more off"),
        new(
            "a seat to set up",
            "conceded",
            Way("seat cut / seat runout", "concession"),
            "missed: the pilot was a size too small"
        ),
        new(
            "a seat to set up",
            "given up",
            Way("seat cut / seat runout", "scrap"),
            "missed: the pilot was a size too small"
        ),
        new("two seats", "skimmed all the same", NotHeard, "missed: the skim is off"),
        new("two seats", "conceded", Conceding, "missed: without the skim the seat at 1I"),
        new("one seat", "cut on without measuring", TooDeep, "cut too deep"),
        new(
            "one seat",
            "vacuum typed as it should be",
            Typed("seat cut / seat vacuum", 1),
            "misread: seat cut / seat vacuum"
        ),
        new(
            "looking over",
            "all called sound",
            (run, prompt) => prompt.Awaits == Awaited.Finding ? prompt.Choices[0] : null,
            "missed: a thread has lost its middle turns"
        ),
        new(
            "looking over",
            "a seat passed over",
            Chosen("teardown / seat as it came", "sound"),
            "missed: the seat at 1E is burnt"
        ),
        new("a whole job", "seats cut without measuring", TooDeepAt("1E"), "cut too deep"),
        new("a whole job", "a margin misread", Typed("teardown / margin", 0.001m), "misread: teardown / margin"),
    ];

    private static Func<LessonRun, Prompt, string?> Chosen(string step, string choice) =>
        (_, prompt) => prompt.Step.FullName == step ? choice : null;

    private static Func<LessonRun, Prompt, string?> Way(string step, string way) =>
        (_, prompt) => prompt.Step.FullName == step && prompt.Awaits == Awaited.WayOn ? way : null;

    // Whatever is out of limits goes out as it is.
    private static string? Conceding(LessonRun run, Prompt prompt) =>
        prompt.Awaits == Awaited.WayOn && prompt.WaysOn.Any(way => way.Kind == Procedures.WayKind.Concession)
            ? "concession"
            : null;

    // Every place is typed too large, once.
    private static Func<LessonRun, Prompt, string?> Typed(string step, decimal off) =>
        (run, prompt) =>
            prompt.Step.FullName == step && prompt.Awaits == Awaited.Reading && run.Misreads.Count == 0
                ? string.Join("; ", run.Shown(prompt).Select(q => new Quantity(q.Value + off, q.Unit)))
                : null;

    private static Func<LessonRun, Prompt, string?> Rounded(string step) =>
        (run, prompt) =>
            prompt.Step.FullName == step
                ? string.Join(
                    "; ",
                    run.Shown(prompt).Select(q => new Quantity(Math.Floor(q.Value * 1000) / 1000, q.Unit))
                )
                : null;

    private static Func<LessonRun, Prompt, string?> Held(string step) =>
        (_, prompt) =>
            prompt.Step.FullName == step && prompt.Awaits == Awaited.Reading ? prompt.Window.Low.ToString() : null;

    private static string? TooDeep(LessonRun run, Prompt prompt) =>
        prompt.Awaits == Awaited.Readout
            ? new Quantity(prompt.Target!.Show.Value + 0.02m, prompt.Target.Show.Unit).ToString()
        : prompt.Awaits == Awaited.WayOn ? "concession"
        : null;

    private static Func<LessonRun, Prompt, string?> TooDeepAt(string position) =>
        (run, prompt) =>
            prompt.Position != position ? null
            : prompt.Awaits == Awaited.WayOn ? "concession"
            : prompt.Step.FullName == "seat cut / recession" ? TooDeep(run, prompt)
            : null;

    // Taking the deck down as if nobody had rung: the call is answered like any other step.
    private static string? NotHeard(LessonRun run, Prompt prompt) =>
        run.Told(prompt).Length > 0 ? prompt.Choices[0] : null;
}
