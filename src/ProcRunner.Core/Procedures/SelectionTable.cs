using ProcRunner.Quantities;

namespace ProcRunner.Procedures;

/// <summary>
/// A table that selects by size: each value falls in one row or in none. A bound belongs to the row below it, "over, up to
/// and including", as in ISO 286-1:2010, Table 1. A gap or an overlap between rows is a fault of the file, and a value
/// beyond the ends is told; nothing is rounded into a row.
/// </summary>
/// <param name="Rows">The rows from the smallest on; at least one.</param>
public sealed record SelectionTable(IReadOnlyList<SelectionRow> Rows)
{
    /// <summary>The row of a value, or null when it is beyond the table's ends.</summary>
    public SelectionRow? Find(Exact value) => Rows.FirstOrDefault(row => row.Holds(value));

    /// <summary>From where to where the rows run, in words.</summary>
    public string Bounds => new SelectionRow(Rows[0].Over, Rows[^1].UpTo, default).Bounds;

    /// <summary>Rows for which no value or more than one row's answer is left, each with what is wrong. All bounds of one dimension.</summary>
    public IEnumerable<(int Row, string Fault)> Faults()
    {
        for (int i = 0; i < Rows.Count; i++)
        {
            SelectionRow row = Rows[i];
            if (row is { Over: { } over, UpTo: { } upTo } && over.CompareTo(upTo) >= 0)
            {
                yield return (i, $"no value is {row.Bounds}: the bounds are the wrong way round");
                continue;
            }

            if (i > 0 && Between(Rows[i - 1], row) is { } fault)
            {
                yield return (i, fault);
            }
        }
    }

    private static string? Between(SelectionRow before, SelectionRow row) =>
        (before.UpTo, row.Over) switch
        {
            ({ } end, { } start) when end.CompareTo(start) < 0 =>
                $"a value over {end} up to {start} is in no row: the row before ends at {end}, this one begins at {start}",
            ({ } end, { } start) when end.CompareTo(start) > 0 =>
                $"a value over {start} up to {end} is in two rows: the row before ends at {end}, this one begins at {start}",
            ({ }, { }) => null,
            _ => "values are in two rows: only the first row may lack 'over' and only the last 'up-to'",
        };
}
