namespace ProcRunner.Records.History;

/// <summary>A run chart in characters, the oldest reading left: on paper, in a pipe and on the screen the same.</summary>
public static class RunChart
{
    private const char Reading = 'o';
    private const char Out = 'X';
    private const char Stray = '@';
    private const char Limit = '-';
    private const char Control = '.';
    private const char Middle = ' ';

    /// <summary>What the marks mean.</summary>
    public const string Legend = "o reading   X out of spec   @ outside control   --- limit   ... control limit";

    /// <summary>The chart of a group; of more readings than there are columns, the last.</summary>
    /// <param name="trend">The history.</param>
    /// <param name="group">The part of it.</param>
    /// <param name="width">Columns, the scale at the left included; 30 or more.</param>
    /// <param name="height">Rows, 5 or more.</param>
    /// <param name="scale">How a figure of the scale is written.</param>
    public static IReadOnlyList<string> Draw(
        Trend trend,
        TrendGroup group,
        int width,
        int height,
        Func<double, string> scale
    )
    {
        int first = Math.Max(0, group.Values.Count - (width - ScaleWidth(group, trend, scale)));
        double[] values = [.. group.Values.Skip(first)];
        if (values.Length == 0)
        {
            return [];
        }

        var windows = group.Readings.Skip(first).Select(trend.WindowOf).ToArray();
        List<double> all = [.. values];
        all.AddRange(windows.SelectMany(w => (double?[])[w.Low, w.High]).OfType<double>());
        if (group.Limits is { } control)
        {
            all.AddRange([control.Low, control.High]);
        }

        (double bottom, double top) = (all.Min(), all.Max());
        double span = top > bottom ? top - bottom : 1;
        int RowOf(double value) =>
            Math.Clamp(
                (int)Math.Round((top - value) / span * (height - 1), MidpointRounding.AwayFromZero),
                0,
                height - 1
            );

        char[][] rows = [.. Enumerable.Range(0, height).Select(_ => Filled(values.Length))];
        for (int i = 0; i < values.Length; i++)
        {
            Put(rows, group.Limits?.Low, i, Control, RowOf);
            Put(rows, group.Limits?.High, i, Control, RowOf);
            Put(rows, windows[i].Low, i, Limit, RowOf);
            Put(rows, windows[i].High, i, Limit, RowOf);
            bool stray = group.Limits is { } limits && (values[i] < limits.Low || values[i] > limits.High);
            char mark =
                group.Readings[first + i].IsOut ? Out
                : stray ? Stray
                : Reading;
            Put(rows, values[i], i, mark, RowOf);
        }

        int labels = Math.Max(scale(top).Length, scale(bottom).Length);
        return
        [
            .. rows.Select(
                (row, i) =>
                {
                    string label =
                        i == 0 ? scale(top)
                        : i == height - 1 ? scale(bottom)
                        : group.Mean is { } mean && i == RowOf(mean) ? scale(mean)
                        : "";
                    return $"{label.PadLeft(labels)} |{new string(row).TrimEnd()}";
                }
            ),
        ];
    }

    private static int ScaleWidth(TrendGroup group, Trend trend, Func<double, string> scale) =>
        2
        + group
            .Values.Concat(
                group
                    .Readings.SelectMany(r => (double?[])[trend.WindowOf(r).Low, trend.WindowOf(r).High])
                    .OfType<double>()
            )
            .Concat(group.Limits is { } limits ? [limits.Low, limits.High] : [])
            .Select(v => scale(v).Length)
            .DefaultIfEmpty(0)
            .Max();

    private static char[] Filled(int length)
    {
        char[] row = new char[length];
        Array.Fill(row, Middle);
        return row;
    }

    private static void Put(char[][] rows, double? value, int column, char mark, Func<double, int> rowOf)
    {
        if (value is { } known)
        {
            rows[rowOf(known)][column] = mark;
        }
    }
}
