using System.Globalization;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>The values that count now, a row for each characteristic and a column for each position.</summary>
internal static class ValueTable
{
    private const int NameWidth = 24;
    private const int CellWidth = 9;
    private const string OutMark = "!";
    private const string StaleMark = "~";
    private const string ConcededMark = "=";
    private const string AsFoundMark = "*";
    private const string None = ".";

    /// <summary>The table for a width; positions that don't fit beside each other stand below.</summary>
    public static IEnumerable<TextLine> Lines(RunState run, int width)
    {
        Plan plan = run.Plan;
        Outlook outlook = new(run);
        int fits = Math.Max(1, (width - NameWidth) / CellWidth);
        int[] all = [.. Enumerable.Range(0, plan.Positions.Count)];
        int[][] blocks = [.. all.Chunk(fits).Where(block => Rows(run, outlook, block).Any())];
        TextLine[] ofHead = [.. OfHead(run, outlook)];
        if (blocks.Length + ofHead.Length == 0)
        {
            yield break;
        }

        yield return new("");
        yield return new(
            $"VALUES THAT COUNT NOW   {OutMark} out of spec   {StaleMark} recheck   {ConcededMark} conceded   {AsFoundMark} as found",
            Ink.Strong
        );
        foreach (TextLine line in ofHead)
        {
            yield return line;
        }

        foreach (int[] block in blocks)
        {
            string names = string.Concat(block.Select(p => plan.PositionName(p).PadLeft(CellWidth)));
            string heading = new string(' ', NameWidth) + names;
            yield return new(heading, Ink.Quiet);
            foreach (TextLine line in Rows(run, outlook, block))
            {
                yield return line with
                {
                    Heading = heading,
                };
            }
        }
    }

    private static IEnumerable<TextLine> OfHead(RunState run, Outlook outlook)
    {
        for (int i = 0; i < run.Plan.Procedure.Characteristics.Count; i++)
        {
            Characteristic characteristic = run.Plan.Procedure.Characteristics[i];
            if (
                characteristic.OfHead
                && run.Value(i, At.Head) is { } value
                && Cell(run, outlook, i, At.Head) is not None and var cell
            )
            {
                yield return new(Name(characteristic, value.Value.Unit) + cell.PadLeft(CellWidth), InkOf(cell));
            }
        }
    }

    private static IEnumerable<TextLine> Rows(RunState run, Outlook outlook, int[] block)
    {
        for (int i = 0; i < run.Plan.Procedure.Characteristics.Count; i++)
        {
            Characteristic characteristic = run.Plan.Procedure.Characteristics[i];
            ValueRecord[] values = characteristic.OfHead
                ? []
                : [.. block.Select(p => run.Value(i, p)).OfType<ValueRecord>()];
            string[] cells = values.Length == 0 ? [] : [.. block.Select(p => Cell(run, outlook, i, p))];
            if (cells.Any(cell => cell != None))
            {
                string row = string.Concat(cells.Select(cell => cell.PadLeft(CellWidth)));
                yield return new(Name(characteristic, values[0].Value.Unit) + row, InkOf(row));
            }
        }
    }

    private static string Name(Characteristic characteristic, Unit unit)
    {
        string symbol = unit.Symbol.Length == 0 ? "" : ", " + unit.Symbol;
        return (Fitting.Line(characteristic.Name, NameWidth - 1 - symbol.Length) + symbol).PadRight(NameWidth);
    }

    private static string Cell(RunState run, Outlook outlook, int characteristic, int position)
    {
        // Once decided otherwise, what a step took that is no longer asked for doesn't count: a relief that is left after all.
        if (
            run.Value(characteristic, position) is not { } value
            || outlook.AskedAt(new At(value.ByStep, position)) != Asked.Yes
        )
        {
            return None;
        }

        bool conceded = run.Find(new At(value.ByStep, position)) is { Conceded: true };
        string mark = value.Stale
            ? outlook.WhoTakesAgain(characteristic, position) is null
                ? AsFoundMark
                : StaleMark
            : value.Judgement.Verdict != Verdict.Out
                ? ""
                : conceded
                    ? ConcededMark
                    : OutMark;
        return mark + value.Value.Value.ToString(CultureInfo.InvariantCulture);
    }

    private static Ink InkOf(string cells) =>
        cells.Contains(OutMark, StringComparison.Ordinal) || cells.Contains(ConcededMark, StringComparison.Ordinal)
            ? Ink.Bad
        : cells.Contains(StaleMark, StringComparison.Ordinal) ? Ink.Mind
        : Ink.Plain;
}
