using System.Globalization;
using ProcRunner.Quantities;

namespace ProcRunner.Records.Drawings;

/// <summary>
/// Values one below the other, each as a dot against the span of its window: the window as a bar from low to high with the
/// aim marked, how it was found as an open ring.
/// </summary>
internal static class RangeChart
{
    private const double Width = 500;
    private const double Left = 62;
    private const double Right = 396;
    private const double Row = 17;
    private const double Top = 20;

    // So many rows stand on a sheet of A4.
    private const int MostRows = 38;

    /// <summary>The chart, in as many parts as it takes to stand on sheets of paper; none when there is nothing to draw.</summary>
    /// <param name="title">What it shows.</param>
    /// <param name="grows">What the right side means: deeper, stronger.</param>
    /// <param name="values">The values, from the top.</param>
    /// <param name="fromZero">True for what is judged from zero, a runout.</param>
    public static IReadOnlyList<Drawing> Of(
        string title,
        string grows,
        IReadOnlyList<PlottedValue> values,
        bool fromZero = false
    )
    {
        if (values.Count == 0)
        {
            return [];
        }

        IEnumerable<Quantity?> all = values.SelectMany(v => new Quantity?[] { v.Value, v.Low, v.High, v.Found });
        Scale scale = fromZero ? Scale.FromZero(Left, Right, all) : Scale.Over(Left, Right, all);
        PlottedValue[][] parts = [.. values.Chunk(MostRows)];
        return
        [
            .. parts.Select(part =>
                Part(
                    parts.Length == 1 ? title : $"{title}, {part[0].Name} to {part[^1].Name}",
                    grows,
                    part,
                    scale,
                    fromZero
                )
            ),
        ];
    }

    private static Drawing Part(string title, string grows, PlottedValue[] values, Scale scale, bool fromZero)
    {
        List<Shape> shapes =
        [
            new Shape.Label(Right, 10, $"{grows} >", 7.5, Anchor.End, Tone: Tone.Quiet),
            new Shape.Label(Width, 10, $"now, {values[0].Value.Unit.Symbol}", 7.5, Anchor.End, Tone: Tone.Quiet),
        ];
        for (int i = 0; i < values.Length; i++)
        {
            shapes.AddRange(RowOf(values[i], Top + (i * Row), scale, fromZero));
        }

        double legend = Top + (values.Length * Row) + 10;
        shapes.AddRange(Legend(legend, values));
        return new Drawing(title, InWords(title, values), Width, legend + 8, shapes);
    }

    private static IEnumerable<Shape> RowOf(PlottedValue value, double top, Scale scale, bool fromZero)
    {
        double middle = top + (Row / 2);
        yield return new Shape.Label(0, middle + 3, value.Name, 9, IsStrong: true);
        yield return new Shape.Line(Left - 8, top + Row, Width, top + Row, Tone.Ground, 0.5);
        double[] marks = value.Found is { } was ? [scale.Of(value.Value), scale.Of(was)] : [scale.Of(value.Value)];
        double from = value.Low is { } low ? scale.Of(low) : Left;
        double to = value.High is { } high ? scale.Of(high) : Right;
        if (value.Low is not null || value.High is not null)
        {
            yield return new Shape.Box(from, top + 4, Math.Max(0.5, to - from), Row - 8, Tone.Span);
        }

        if (value.Low is { } least && !fromZero)
        {
            yield return new Shape.Line(from, top + 2.5, from, top + Row - 2.5, Tone.Quiet, 1);
            yield return LimitOf(least, from, middle, outward: -1, marks);
        }

        if (value.High is { } most)
        {
            yield return new Shape.Line(to, top + 2.5, to, top + Row - 2.5, Tone.Quiet, 1);
            yield return LimitOf(most, to, middle, outward: 1, marks);
        }

        if (value.Aim is { } aim)
        {
            yield return new Shape.Line(
                scale.Of(aim),
                top + 1.5,
                scale.Of(aim),
                top + Row - 1.5,
                Tone.Ink,
                0.75,
                IsDashed: true
            );
        }

        if (value.Found is { } found)
        {
            yield return new Shape.Circle(scale.Of(found), middle, 3.2, Tone.Paper, Tone.Found, 1.2);
        }

        foreach (Shape mark in Mark(scale.Of(value.Value), middle, value.NeedsAttention))
        {
            yield return mark;
        }

        string number = value.Word.Length > 0 ? $"{value.Word} {Number(value.Value)}" : Number(value.Value);
        yield return new Shape.Label(
            Width,
            middle + 3,
            number,
            9,
            Anchor.End,
            IsStrong: true,
            value.NeedsAttention ? Tone.Attention : Tone.Ink
        );
    }

    // Outside its window, unless a mark would lie on it there and none does inside: past its limit is where a value matters most.
    private static Shape.Label LimitOf(Quantity limit, double at, double middle, int outward, double[] marks)
    {
        const double Size = 6.5;
        const double Gap = 2.5;
        const double HalfMark = 5;
        string number = Number(limit);
        double reach = Gap + (number.Length * Size * 0.56) + HalfMark;
        bool IsTaken(int side) => Array.Exists(marks, m => (m - at) * side > -HalfMark && (m - at) * side < reach);
        int side = IsTaken(outward) && !IsTaken(-outward) ? -outward : outward;
        return new Shape.Label(
            at + (side * Gap),
            middle + 2,
            number,
            Size,
            side < 0 ? Anchor.End : Anchor.Start,
            Tone: Tone.Quiet
        );
    }

    /// <summary>The mark of a value: a dot, or a square standing on its corner for one that is out of spec.</summary>
    public static IEnumerable<Shape> Mark(double x, double y, bool needsAttention)
    {
        yield return needsAttention
            ? new Shape.Outline([(x, y - 5), (x + 5, y), (x, y + 5), (x - 5, y)], Tone.Attention)
            : new Shape.Circle(x, y, 3.6, Tone.Value);
    }

    private static IEnumerable<Shape> Legend(double y, IReadOnlyList<PlottedValue> values)
    {
        yield return new Shape.Box(Left, y - 6, 22, 8, Tone.Span);
        yield return new Shape.Line(Left + 11, y - 6, Left + 11, y + 2, Tone.Ink, 0.75, IsDashed: true);
        yield return new Shape.Label(Left + 27, y, "window, aim dashed", 7, Tone: Tone.Quiet);
        yield return new Shape.Circle(Left + 122, y - 2.3, 3.2, Tone.Value);
        yield return new Shape.Label(Left + 129, y, "as built", 7, Tone: Tone.Quiet);
        if (values.Any(v => v.Found is not null))
        {
            yield return new Shape.Circle(Left + 177, y - 2.3, 3.2, Tone.Paper, Tone.Found, 1.2);
            yield return new Shape.Label(Left + 184, y, "as found", 7, Tone: Tone.Quiet);
        }

        if (values.Any(v => v.NeedsAttention))
        {
            foreach (Shape mark in Mark(Left + 236, y - 2.3, needsAttention: true))
            {
                yield return mark;
            }

            yield return new Shape.Label(Left + 244, y, "out of spec", 7, Tone: Tone.Quiet);
        }
    }

    private static string InWords(string title, IReadOnlyList<PlottedValue> values) =>
        $"{title}. "
        + string.Join(
            "; ",
            values.Select(v =>
            {
                string window = Telling.Window(v.Low, v.Aim, v.High);
                string found = v.Found is { } was ? $", as found {was}" : "";
                string word = v.Word.Length > 0 ? $", {v.Word}" : "";
                return $"{v.Name} {v.Value}{word}{(window.Length > 0 ? $" ({window})" : "")}{found}";
            })
        )
        + ".";

    private static string Number(Quantity quantity) => quantity.Value.ToString(CultureInfo.InvariantCulture);
}
