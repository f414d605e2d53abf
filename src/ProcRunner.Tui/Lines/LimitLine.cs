using ProcRunner.Quantities;
using ProcRunner.Runs;

namespace ProcRunner.Tui.Lines;

/// <summary>A limit as typed: <c>stem height at 3E low 1.50 in high 1.53 in</c>.</summary>
internal sealed record LimitLine(string Name, int? Position, Quantity? Low, Quantity? Aim, Quantity? High)
{
    private static readonly string[] Ends = [" low ", " aim ", " high "];

    /// <summary>Reads it; null when it can't be.</summary>
    public static LimitLine? Read(RunState state, string text)
    {
        string padded = text + " ";
        int end = Ends.Select(word => padded.IndexOf(word, StringComparison.Ordinal))
            .Where(i => i >= 0)
            .DefaultIfEmpty(-1)
            .Min();
        if (end < 0)
        {
            return null;
        }

        string name = padded[..end].Trim();
        int? position = null;
        int at = name.LastIndexOf(" at ", StringComparison.Ordinal);
        if (at > 0 && state.Plan.TryPosition(name[(at + 4)..], out int found))
        {
            (name, position) = (name[..at].Trim(), found);
        }

        Unit unit = state.Plan.TryCharacteristic(name, out int index)
            ? state.Plan.Procedure.Characteristics[index].UnitOn(state.Plan.Head)
            : state.Plan.Head.LengthUnit;
        Quantity?[] ends = [.. Ends.Select(word => EndAt(padded, word, unit))];
        return new LimitLine(name, position, ends[0], ends[1], ends[2]);
    }

    private static Quantity? EndAt(string text, string word, Unit unit)
    {
        int start = text.IndexOf(word, StringComparison.Ordinal);
        if (start < 0)
        {
            return null;
        }

        string rest = text[(start + word.Length)..];
        int stop = Ends.Select(other => rest.IndexOf(other, StringComparison.Ordinal))
            .Where(i => i >= 0)
            .DefaultIfEmpty(rest.Length)
            .Min();
        return
            EntryText.Parse(rest[..stop].Trim(), new FieldHint(unit, 1, 1)) is EntryResult.Taken { Values: [var value] }
            ? value
            : null;
    }
}
