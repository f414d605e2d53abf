using ProcRunner.Store.Local;

namespace ProcRunner.Benchmarks.History;

/// <summary>What is looked for in the generated shop: each kind of search there is, and what stands in every job.</summary>
internal static class Searches
{
    private static readonly DateTimeOffset From = new(2018, 3, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>The searches, each with what kind it is.</summary>
    public static IReadOnlyList<(string Kind, JobQuery Query)> All { get; } =
    [
        ("stamp", Text("A10007")),
        ("stamp, in small letters, o for 0", Text("a1oo07")),
        ("stamp, O for 0 in the middle", Text("B1O500")),
        ("stamp, two changed round", Text("C12354")),
        ("part of a stamp", Text("C1235")),
        ("part of a stamp, in stamps alone", In(JobField.Stamp, "235")),
        ("one figure, in stamps alone", In(JobField.Stamp, "1")),
        ("customer", Text("upper mill")),
        ("customer alone", In(JobField.Customer, "quarry")),
        ("part of a customer", Text("no. 117")),
        ("head family", In(JobField.Head, "irrigation")),
        ("part number", Text("SI-7")),
        ("a part's name", Text("seat insert")),
        ("lot", In(JobField.Lot, "L1999")),
        ("gauge", In(JobField.Gauge, "B2")),
        ("cutter", In(JobField.Cutter, "K3")),
        ("person", In(JobField.Person, "vale")),
        ("words of a note", Text("box 4711")),
        ("words of a note in every job", Text("look again")),
        ("the same in notes alone", In(JobField.Note, "look again")),
        ("a day's heads", Days("", 1)),
        ("a year's heads", Days("", 365)),
        ("customer within a month", Days("harbour", 31)),
        ("a letter that stands in every job", Text("e")),
        ("three pieces that stand in every job", Text("in e 1")),
        ("three words of every note, in another order", Text("again bench look")),
        ("a word of every note and three figures", Text("edge 3 2 1")),
        ("six letters", Text("a e i o t n")),
        ("words in three fields", Text("vale K3 seat")),
        ("nothing like it", Text("nothing like it")),
        (
            "five fields and a year",
            Days("mill", 365) with
            {
                In =
                [
                    (JobField.Head, "pump"),
                    (JobField.Part, "SI-"),
                    (JobField.Gauge, "D1"),
                    (JobField.Note, "look"),
                    (JobField.Person, "moss"),
                ],
            }
        ),
    ];

    private static JobQuery Text(string text) => new() { Text = text };

    private static JobQuery In(JobField field, string text) => new() { In = [(field, text)] };

    private static JobQuery Days(string text, int days) =>
        new()
        {
            Text = text,
            From = From,
            Before = From.AddDays(days),
        };
}
