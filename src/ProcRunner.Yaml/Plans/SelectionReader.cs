using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Yaml.Trees;
using ProcRunner.Yaml.Values;

namespace ProcRunner.Yaml.Plans;

/// <summary>Reads the rows by which a worked-out value is selected, and reports every gap and overlap between them.</summary>
internal sealed class SelectionReader(ValueReader values, ProblemLog log)
{
    private static readonly string[] RowKeys = ["over", "up-to", "gives"];

    /// <summary>The table, or null with its problems.</summary>
    /// <param name="node">The list of rows.</param>
    /// <param name="by">What the bounds measure.</param>
    public SelectionTable? Read(Node node, Dimension by)
    {
        int before = log.Count;
        List<SelectionRow> rows = [];
        List<Node> nodes = [];
        Dimension? gives = null;
        foreach (Node item in values.List(node, "rows"))
        {
            if (Keys.Of(item, "a row", RowKeys, log) is not { } keys)
            {
                continue;
            }

            Quantity? over = Of(keys.Find("over"), by);
            Quantity? upTo = Of(keys.Find("up-to"), by);
            Quantity? given = keys.Require("gives") is { } what ? Of(what, gives) : null;
            if (given is { } known)
            {
                gives ??= known.Dimension;
                rows.Add(new SelectionRow(over, upTo, known));
                nodes.Add(item);
            }
        }

        if (rows.Count == 0 && log.Count == before)
        {
            log.Add(
                "PR-Y07",
                node.Place,
                "a table without rows selects nothing; add {over: ..., up-to: ..., gives: ...}"
            );
        }

        // With a row missing, what seems a gap may be none.
        SelectionTable table = new(rows);
        foreach ((int row, string fault) in log.Count == before ? table.Faults() : [])
        {
            log.Add("PR-P10", nodes[row].Place, $"{fault}; let each row begin where the one before ends");
        }

        return log.Count == before ? table : null;
    }

    private Quantity? Of(Node? node, Dimension? wanted)
    {
        if (values.Quantity(node, null) is not { } read)
        {
            return null;
        }

        if (wanted is { } dimension && read.Dimension != dimension)
        {
            log.Add(
                "PR-F02",
                node!.Place,
                $"{read} is a {read.Dimension}, but a {dimension} is wanted here; correct its unit"
            );
            return null;
        }

        return read;
    }
}
