namespace ProcRunner.Yaml.Tests;

/// <summary>A sample spoiled in one place.</summary>
/// <param name="Code">The only code that it must raise.</param>
/// <param name="Of">Which sample.</param>
/// <param name="Old">The piece that is replaced.</param>
/// <param name="New">What replaces it.</param>
/// <param name="At">The piece of the spoiled text where the problem stands; null: the file as a whole.</param>
internal sealed record ProblemCase(string Code, CaseOf Of, string Old, string New, string? At)
{
    /// <summary>One or more for every code that a text can raise.</summary>
    public static IReadOnlyList<ProblemCase> All { get; } =
    [
        new("PR-Y01", CaseOf.Head, "title: ", "title: " + new string('x', 1_000_000), null),
        new("PR-Y03", CaseOf.Head, "kinds: [I, E]", "kinds: [I, E", "guide-angle"),
        new("PR-Y03", CaseOf.Head, "grey iron", "grey\u0007iron", "\u0007"),
        new("PR-Y03", CaseOf.Head, "grey iron", "\"grey \\ud800 iron\"", "\"grey"),
        new("PR-Y04", CaseOf.Head, "grey iron", "&iron grey iron", "&iron"),
        new("PR-Y04", CaseOf.Head, "grey iron", "*iron", "*iron"),
        new("PR-Y04", CaseOf.Head, "grey iron", "!!str grey", "!!str"),
        new("PR-Y04", CaseOf.Head, "forbidden:", "---\nforbidden:", "---"),
        new("PR-Y05", CaseOf.Head, "unit: in", "unit: in\nunit: mm", "unit: mm"),
        new("PR-Y06", CaseOf.Head, "features:", "featuers:", "featuers"),
        new("PR-Y07", CaseOf.Head, "unit: in\n", "", "head:"),
        new("PR-Y08", CaseOf.Head, "kinds: [I, E]", "kinds: I and E", "I and E"),
        new("PR-Y09", CaseOf.Head, "pre-chambers: yes", "pre-chambers: maybe", "maybe"),
        new("PR-Y10", CaseOf.Head, "is: 0.310", "is: \"0,310\"", "\"0,310"),
        new("PR-Y10", CaseOf.Head, "revision: 1", "revision: first", "first"),
        new("PR-Y11", CaseOf.Head, "head: small-two", "head: small/two", "small/two"),
        new("PR-Y13", CaseOf.Head, "grey iron", new string('g', 501), new string('g', 501)),
        new("PR-H01", CaseOf.Head, "high: 3.945, origin: maker}", "high: 3.945}", "{low: 3.915"),
        new("PR-H02", CaseOf.Head, "low: 3.915", "low: 3.955", "3.940"),
        new("PR-H03", CaseOf.Head, "low: 0.038 mm", "low: 0.058 mm", "0.058 mm"),
        new("PR-H04", CaseOf.Head, "high: 3.945", "high: 3.945 lbf", "3.945 lbf"),
        new(
            "PR-H05",
            CaseOf.Head,
            "hole: {low: 0.6245, high: 0.6250}",
            "hole: {low: 0.6245, high: 0.6265}",
            "{outside"
        ),
        new(
            "PR-H06",
            CaseOf.Head,
            "high: 0.6250}, origin",
            "high: 0.6250}, interference: {low: 0.0015, high: 0.0026}, origin",
            "interference"
        ),
        new("PR-H07", CaseOf.Head, "worn: {high: 0.0045}", "worn: {high: 0.0025}", "0.0025"),
        new(
            "PR-H08",
            CaseOf.Head,
            "{low: 3.915, aim: 3.940, high: 3.945, origin",
            "{aim: 3.940, origin",
            "{aim: 3.940"
        ),
        new("PR-H09", CaseOf.Head, "  E:\n", "  X:\n", "X:"),
        new("PR-Y10", CaseOf.Procedure, "rests-on: [deck]", "doubt: {swapped: 5 lbf}, rests-on: [deck]", "5 lbf"),
        new("PR-Y10", CaseOf.Procedure, "rests-on: [deck]", "doubt: {swapped: 0 in}, rests-on: [deck]", "0 in}"),
        new("PR-Y06", CaseOf.Procedure, "rests-on: [deck]", "doubt: {guess: no}, rests-on: [deck]", "guess"),
        new("PR-Y09", CaseOf.Procedure, "rests-on: [deck]", "doubt: perhaps, rests-on: [deck]", "perhaps"),
        new("PR-Y09", CaseOf.Procedure, "rests-on: [deck]", "wears: thinner, rests-on: [deck]", "thinner"),
        new("PR-Y06", CaseOf.Procedure, "stages:\n", "build-record: {recesion: stem}\nstages:\n", "recesion:"),
        new("PR-Y09", CaseOf.Procedure, "stages:\n", "build-record: {flatness: stem}\nstages:\n", "stem}\nstages"),
        new("PR-P01", CaseOf.Procedure, "stages:\n", "build-record: {margin: edge}\nstages:\n", "edge}"),
        new("PR-P01", CaseOf.Procedure, "stages:\n", "build-record: {for-the-builder: [bye]}\nstages:\n", "[bye"),
        new(
            "PR-P10",
            CaseOf.Procedure,
            "window: stem clearance}",
            "window: stem clearance, selects: [{up-to: 0.001 in, gives: 1 in}, {over: 0.002 in, gives: 2 in}]}",
            "{over: 0.002"
        ),
        new("PR-P01", CaseOf.Procedure, "- measure: bore", "- measure: boar", "boar"),
        new("PR-P01", CaseOf.Procedure, "rests-on: [deck]", "rests-on: [dekc]", "dekc"),
        new("PR-P01", CaseOf.Procedure, "back-to: seat", "back-to: seta", "seta"),
        new("PR-P01", CaseOf.Procedure, "= 'keep'", "= 'kepe'", "[decided"),
        new(
            "PR-P02",
            CaseOf.Procedure,
            "deck: {of: head",
            "stem: {of: head, is: x}\n  deck: {of: head",
            "stem: {of: position"
        ),
        new(
            "PR-P02",
            CaseOf.Procedure,
            "- do: clean the seat",
            "- do: clean the seat\n  - do: clean the seat",
            "do: clean the seat\n    only"
        ),
        new("PR-P03", CaseOf.Procedure, "= 'keep'", "= 'keep' and [decided.valve] = 'replace'", "[decided"),
        new(
            "PR-P03",
            CaseOf.Procedure,
            "only-where: \"[decided.valve] = 'keep'\"",
            "for: [I]\n    only-where: \"[kind] = 'E'\"",
            "[kind]"
        ),
        new(
            "PR-P04",
            CaseOf.Procedure,
            "places: [top, bottom]}",
            "places: [top, bottom], rests-on: [clearance]}",
            "stem:"
        ),
        new(
            "PR-P04",
            CaseOf.Procedure,
            "is: \"[bore] - [stem.largest]\"",
            "is: \"[bore] - [clearance]\"",
            "\"[bore] - [clearance]"
        ),
        new("PR-P05", CaseOf.Procedure, "  - zero: seat\n", "  - do: seat\n", "cut: recession"),
        new("PR-P05", CaseOf.Procedure, "    signed-by: lead", "    signed-by: lead\n    gauge: depth", "gauge: depth"),
        new("PR-P06", CaseOf.Procedure, "back-to: seat}", "back-to: cracks}", "cracks}"),
        new("PR-P07", CaseOf.Procedure, "[bore] - [stem.largest]", "[bore] - [recession]", "[bore] - [rec"),
        new("PR-P08", CaseOf.Procedure, "- sign: released", "- sign: approved", null),
        new(
            "PR-P08",
            CaseOf.Procedure,
            "  - do: clean",
            "  - sign: released\n    named: early\n  - do: clean",
            "sign: released\n    named"
        ),
        new("PR-P09", CaseOf.Procedure, "  - sign: measured\n", "", "measure: stem"),
        new("PR-F01", CaseOf.Procedure, "[bore] - [stem.largest]", "[bore] -", "\", window"),
        new("PR-F02", CaseOf.Procedure, "\"[setting.allowance]\"", "\"'5 lbf'\"", "'5 lbf'"),
        new("PR-F03", CaseOf.Procedure, "[setting.allowance]", "[setting.alowance]", "[setting.alo"),
        new(
            "PR-F04",
            CaseOf.Procedure,
            "[setting.allowance]",
            new string('(', 40) + "1" + new string(')', 40),
            "((((((((1"
        ),
        new(
            "PR-J01",
            CaseOf.Join,
            "    recession: {low: 0.049, aim: 0.055, high: 0.061, origin: maker}",
            "    {}",
            null
        ),
        new("PR-J02", CaseOf.Join, "valve lift", "valve drop", null),
        new("PR-J03", CaseOf.Join, "pre-chambers", "overhead cam", null),
        new("PR-J05", CaseOf.Join, "lapping:", "laping:", null),
        new("PR-J04", CaseOf.Join, "{low: 0.049, aim: 0.055, high: 0.061,", "{low: 49 lbf, high: 61 lbf,", null),
    ];
}
