using ProcRunner.Quantities;

namespace ProcRunner.Practice.Rehearsals;

/// <summary>A piece of a rehearsal's report, the same for lines and for the page.</summary>
/// <param name="Title">What it is about.</param>
/// <param name="Says">How it is to be read, in sentences; empty when it speaks for itself.</param>
public abstract record ReportPart(string Title, string Says)
{
    /// <summary>Rows of figures.</summary>
    /// <param name="Title">What it is about.</param>
    /// <param name="Says">How it is to be read.</param>
    /// <param name="Columns">The columns' names; the first column names the row, the others hold figures.</param>
    /// <param name="Rows">The rows, each with as many texts as there are columns.</param>
    public sealed record Table(
        string Title,
        string Says,
        IReadOnlyList<string> Columns,
        IReadOnlyList<IReadOnlyList<string>> Rows
    ) : ReportPart(Title, Says);

    /// <summary>How often a value came out at each size.</summary>
    /// <param name="Title">What it is about.</param>
    /// <param name="Says">How it is to be read.</param>
    /// <param name="Spread">The values.</param>
    /// <param name="Unit">The unit they are shown in.</param>
    public sealed record Plot(string Title, string Says, Distribution Spread, Unit Unit) : ReportPart(Title, Says);
}
