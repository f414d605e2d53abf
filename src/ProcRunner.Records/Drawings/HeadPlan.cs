using System.Globalization;
using ProcRunner.Procedures;

namespace ProcRunner.Records.Drawings;

/// <summary>The head seen from the deck: every valve in its place with its final values.</summary>
internal static class HeadPlan
{
    private const double Width = 500;
    private const double Line = 9.5;
    private const double Small = 7.5;

    private const double MostOnFront = 240;

    // Of a text in this font, as a part of its size: its figures are 0.556 wide, capitals wider.
    private const double WidthOfCharacter = 0.58;

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

    /// <summary>The plan, in as many parts as it takes for texts not to touch; none when no value of a valve is known.</summary>
    public static IReadOnlyList<Drawing> Of(BuildRecord record)
    {
        (string Role, string Short)[] shown =
        [
            .. Shown.Where(s => record.Plan.Positions.Any(p => record.Shown(s.Role, p.Name) is not null)),
        ];
        if (shown.Length == 0)
        {
            return [];
        }

        int[] cylinders = [.. record.Plan.Positions.Select(p => p.Cylinder).Distinct()];
        double widest = record
            .Plan.Positions.SelectMany(p => shown.Select(s => Text(record, p, s)?.Text.Length ?? 0))
            .Max();
        int beside = Math.Max(1, (int)(Width / ((widest * Small * WidthOfCharacter) + 4)));
        int lines = (cylinders.Length + beside - 1) / beside;
        int[][] parts = [.. cylinders.Chunk((cylinders.Length + lines - 1) / lines)];
        return [.. parts.Select(part => Part(record, part, parts.Length, shown))];
    }

    /// <summary>True for a plan that is small enough for the front, which is one page.</summary>
    public static bool IsForTheFront(IReadOnlyList<Drawing> plans) => plans is [{ Height: <= MostOnFront }];

    private static Drawing Part(BuildRecord record, int[] cylinders, int of, (string Role, string Short)[] shown)
    {
        Position[] positions = [.. record.Plan.Positions.Where(p => cylinders.Contains(p.Cylinder))];
        Position[][] ranks = [.. positions.GroupBy(p => p.Kind).Select(g => g.ToArray())];
        double across = Width / cylinders.Length;
        double radius = Math.Min(15, across / 4);
        double rank = (2 * radius) + 8 + (shown.Length * Line);
        double height = 16 + (ranks.Length * rank) + 4;
        List<Shape> shapes = [new Shape.Box(0.5, 14, Width - 1, height - 18, Tone.Ground, Tone.Quiet)];
        for (int c = 0; c < cylinders.Length; c++)
        {
            double x = (c + 0.5) * across;
            string name = string.Create(CultureInfo.InvariantCulture, $"cylinder {cylinders[c]}");
            shapes.Add(new Shape.Label(x, 9, name, Small, Anchor.Middle, Tone: Tone.Quiet));
            for (int r = 0; r < ranks.Length; r++)
            {
                if (Array.Find(ranks[r], p => p.Cylinder == cylinders[c]) is { } position)
                {
                    shapes.AddRange(Valve(record, position, x, 20 + (r * rank), radius, shown));
                }
            }
        }

        string title = "Plan of the head with final values";
        string named =
            of == 1
                ? title
                : string.Create(CultureInfo.InvariantCulture, $"{title}, cylinders {cylinders[0]} to {cylinders[^1]}");
        return new Drawing(named, InWords(named, positions, record, shown), Width, height, shapes);
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
        bool isShort = position.Name.Length < 3;
        yield return new Shape.Label(
            x,
            middle + (isShort ? 4 : 2.5),
            position.Name,
            isShort ? 11 : Small,
            Anchor.Middle,
            IsStrong: true
        );
        double y = top + (2 * radius) + 9;
        foreach ((string role, string word) in shown)
        {
            if (Text(record, position, (role, word)) is var (text, needs))
            {
                Tone tone = needs ? Tone.Attention : Tone.Ink;
                yield return new Shape.Label(x, y, text, Small, Anchor.Middle, IsStrong: needs, tone);
            }

            y += Line;
        }
    }

    private static (string Text, bool NeedsAttention)? Text(
        BuildRecord record,
        Position position,
        (string Role, string Short) shown
    )
    {
        if (record.Shown(shown.Role, position.Name) is not { } value)
        {
            return null;
        }

        PlottedValue plotted = PlottedValue.Of(value);
        string number = value.Record.Value.Value.ToString(CultureInfo.InvariantCulture);
        string mark = plotted.Word.Length > 0 ? $" {plotted.Word}" : "";
        return ($"{shown.Short} {number}{mark}", plotted.NeedsAttention);
    }

    private static string InWords(
        string title,
        Position[] positions,
        BuildRecord record,
        (string Role, string Short)[] shown
    ) =>
        $"{title}. "
        + string.Join(
            "; ",
            positions.Select(p =>
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
