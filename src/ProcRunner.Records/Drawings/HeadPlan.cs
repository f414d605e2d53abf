using System.Globalization;
using ProcRunner.Procedures;

namespace ProcRunner.Records.Drawings;

/// <summary>The head seen from the deck: every valve in its place with its final values.</summary>
internal static class HeadPlan
{
    private const double Width = 500;
    private const double Line = 9.5;

    // Long names are shortened, so that four cylinders fit beside each other.
    private static readonly (string Role, string Short)[] Shown =
    [
        (RecordRoles.Recession, "depth"),
        (RecordRoles.Clearance, "clear"),
        (RecordRoles.SeatRunout, "runout"),
        (RecordRoles.Vacuum, "vacuum"),
    ];

    /// <summary>What it shows at each valve.</summary>
    public static IEnumerable<string> Roles => Shown.Select(s => s.Role);

    /// <summary>The plan; null when no value of a valve is known.</summary>
    public static Drawing? Of(BuildRecord record)
    {
        (string Role, string Short)[] shown =
        [
            .. Shown.Where(s => record.Plan.Positions.Any(p => record.Shown(s.Role, p.Name) is not null)),
        ];
        if (shown.Length == 0)
        {
            return null;
        }

        int[] cylinders = [.. record.Plan.Positions.Select(p => p.Cylinder).Distinct()];
        Position[][] ranks = [.. record.Plan.Positions.GroupBy(p => p.Kind).Select(g => g.ToArray())];
        double across = Width / cylinders.Length;
        double radius = Math.Min(15, across / 4);
        double rank = (2 * radius) + 8 + (shown.Length * Line);
        double height = 16 + (ranks.Length * rank) + 4;
        List<Shape> shapes = [new Shape.Box(0.5, 14, Width - 1, height - 18, Tone.Ground, Tone.Quiet)];
        for (int c = 0; c < cylinders.Length; c++)
        {
            double x = (c + 0.5) * across;
            string name = string.Create(CultureInfo.InvariantCulture, $"cylinder {cylinders[c]}");
            shapes.Add(new Shape.Label(x, 9, name, 7.5, Anchor.Middle, Tone: Tone.Quiet));
            for (int r = 0; r < ranks.Length; r++)
            {
                if (Array.Find(ranks[r], p => p.Cylinder == cylinders[c]) is { } position)
                {
                    shapes.AddRange(Valve(record, position, x, 20 + (r * rank), radius, shown));
                }
            }
        }

        return new Drawing("Plan of the head with final values", InWords(record, shown), Width, height, shapes);
    }

    private static IEnumerable<Shape> Valve(
        BuildRecord record,
        Position position,
        double x,
        double top,
        double radius,
        (string Role, string Short)[] shown
    )
    {
        FinalValue[] all = [.. record.Values.Where(v => v.Position == position.Name)];
        bool needsAttention = all.Any(v => v.Standing is ValueStanding.Out or ValueStanding.Conceded);
        double middle = top + radius;
        Tone edge = needsAttention ? Tone.Attention : Tone.Ink;
        yield return new Shape.Circle(x, middle, radius, Tone.Paper, edge, needsAttention ? 2 : 1);
        yield return new Shape.Circle(x, middle, radius - 4, Tone.Paper, edge, 0.5);
        yield return new Shape.Label(x, middle + 4, position.Name, 11, Anchor.Middle, IsStrong: true);
        double y = top + (2 * radius) + 9;
        foreach ((string role, string word) in shown)
        {
            if (record.Shown(role, position.Name) is { } value)
            {
                PlottedValue plotted = PlottedValue.Of(value);
                string number = value.Record.Value.Value.ToString(CultureInfo.InvariantCulture);
                string mark = plotted.Word.Length > 0 ? $" {plotted.Word}" : "";
                yield return new Shape.Label(
                    x,
                    y,
                    $"{word} {number}{mark}",
                    7.5,
                    Anchor.Middle,
                    IsStrong: plotted.NeedsAttention,
                    plotted.NeedsAttention ? Tone.Attention : Tone.Ink
                );
            }

            y += Line;
        }
    }

    private static string InWords(BuildRecord record, (string Role, string Short)[] shown) =>
        "Plan of the head with final values. "
        + string.Join(
            "; ",
            record.Plan.Positions.Select(p =>
                $"{p.Name}: "
                + string.Join(
                    ", ",
                    shown
                        .Select(s => record.Shown(s.Role, p.Name))
                        .OfType<FinalValue>()
                        .Select(v => $"{v.Name} {v.Record.Value.ToDisplay()} {v.Verdict}")
                )
            )
        )
        + ".";
}
