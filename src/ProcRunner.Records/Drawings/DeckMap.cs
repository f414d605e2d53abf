using System.Globalization;
using ProcRunner.Quantities;
using ProcRunner.Runs;

namespace ProcRunner.Records.Drawings;

/// <summary>
/// The deck before and after, side by side: thickness where it was measured, and flatness as lines bent by what was
/// measured along them, much enlarged, both sides to one scale.
/// </summary>
internal static class DeckMap
{
    private const double Width = 500;
    private const double PanelWidth = 170;
    private const double PanelHeight = 84;
    private const double Top = 26;
    private const double Height = Top + PanelHeight + 24;
    private const double MostBend = 13;

    private static readonly double[] PanelsFrom = [36, 296];

    /// <summary>The thickness; null when it was never measured at places.</summary>
    public static Drawing? OfThickness(FinalValue? value) =>
        Of("Deck thickness before and after", value, (places, left, _) => Thickness(places, left));

    /// <summary>The flatness; null when it was never measured along lines.</summary>
    public static Drawing? OfFlatness(FinalValue? value) =>
        Of("Deck flatness before and after, bends much enlarged", value, Flatness);

    private static Drawing? Of(
        string title,
        FinalValue? value,
        Func<IReadOnlyList<PlaceValue>, double, double, IEnumerable<Shape>> draw
    )
    {
        if (value is null || value.Record.Places.Count < 2)
        {
            return null;
        }

        IReadOnlyList<PlaceValue> now = value.Record.Places;
        bool sameAsFound = value.FoundPlaces.SequenceEqual(now);
        (string Name, IReadOnlyList<PlaceValue> Places)[] panels =
            value.FoundPlaces.Count > 1 && !sameAsFound
                ? [("as found", value.FoundPlaces), ("as built", now)]
                : [(sameAsFound ? "as found" : "as built", now)];
        double most = panels.SelectMany(p => p.Places).Max(p => Size(p.Value));
        List<Shape> shapes = [];
        for (int i = 0; i < panels.Length; i++)
        {
            shapes.AddRange(Frame(PanelsFrom[i], panels[i].Name, value.Record.Value.Unit));
            shapes.AddRange(draw(panels[i].Places, PanelsFrom[i], most > 0 ? MostBend / most : 0));
        }

        string words = string.Join(
            ". ",
            panels.Select(p => $"{p.Name}: {string.Join(", ", p.Places.Select(v => $"{v.Place} {v.Value}"))}")
        );
        return new Drawing(title, $"{title}. {words}.", Width, Height, shapes);
    }

    private static IEnumerable<Shape> Frame(double left, string name, Unit unit)
    {
        yield return new Shape.Label(
            left + (PanelWidth / 2),
            9,
            $"{name}, {unit.Symbol}",
            8.5,
            Anchor.Middle,
            IsStrong: true
        );
        yield return new Shape.Box(left, Top, PanelWidth, PanelHeight, Tone.Ground, Tone.Quiet);
        yield return new Shape.Label(left - 4, Top + (PanelHeight / 2) + 2, "front", 6.5, Anchor.End, Tone: Tone.Quiet);
    }

    private static IEnumerable<Shape> Thickness(IReadOnlyList<PlaceValue> places, double left) =>
        places.SelectMany(place =>
        {
            (double x, double y) = Spot(place.Place, left);
            return new Shape[]
            {
                new Shape.Circle(x, y, 1.8, Tone.Value),
                new Shape.Label(x, y - 5, Number(place.Value), 8, Anchor.Middle, IsStrong: true),
                new Shape.Label(x, y + 9, place.Place, 6, Anchor.Middle, Tone: Tone.Quiet),
            };
        });

    private static (double X, double Y) Spot(string place, double left)
    {
        double x =
            place.Contains("front", StringComparison.Ordinal) ? left + 30
            : place.Contains("rear", StringComparison.Ordinal) ? left + PanelWidth - 30
            : left + (PanelWidth / 2);
        double y =
            place.Contains("left", StringComparison.Ordinal) ? Top + 17
            : place.Contains("right", StringComparison.Ordinal) ? Top + PanelHeight - 15
            : Top + (PanelHeight / 2);
        return (x, y);
    }

    private static IEnumerable<Shape> Flatness(IReadOnlyList<PlaceValue> places, double left, double enlarged) =>
        places.SelectMany((place, i) => Bent(place, left, enlarged, i));

    // A line over the deck, bent upward on the paper by what was measured along it; its number stands at its end.
    private static IEnumerable<Shape> Bent(PlaceValue place, double left, double enlarged, int index)
    {
        ((double X, double Y) from, (double X, double Y) to, Shape.Label label) = Track(place, left, index);
        double bend = Size(place.Value) * enlarged;
        yield return new Shape.Line(from.X, from.Y, to.X, to.Y, Tone.Rule, 0.5, IsDashed: true);
        (double X, double Y) before = from;
        const int Pieces = 16;
        for (int i = 1; i <= Pieces; i++)
        {
            double t = (double)i / Pieces;
            double lift = 4 * bend * t * (1 - t);
            bool isAcross = Math.Abs(to.X - from.X) < 1;
            (double X, double Y) next = (
                from.X + ((to.X - from.X) * t) + (isAcross ? lift : 0),
                from.Y + ((to.Y - from.Y) * t) - (isAcross ? 0 : lift)
            );
            yield return new Shape.Line(before.X, before.Y, next.X, next.Y, Tone.Value, 1);
            before = next;
        }

        yield return label;
    }

    private static ((double X, double Y) From, (double X, double Y) To, Shape.Label Label) Track(
        PlaceValue place,
        double left,
        int index
    )
    {
        (double l, double r, double t, double b) = (left + 8, left + PanelWidth - 8, Top + 8, Top + PanelHeight - 8);
        string number = Number(place.Value);
        double across = (
            place.Place.Contains("rear", StringComparison.Ordinal) ? 0.8
            : place.Place.Contains("front", StringComparison.Ordinal) ? 0.2
            : 0.5
        );
        double along = (
            place.Place.Contains("right", StringComparison.Ordinal) ? 0.86
            : place.Place.Contains("left", StringComparison.Ordinal) ? 0.2
            : 0.53
        );
        if (place.Place.StartsWith("across", StringComparison.Ordinal))
        {
            double x = left + (PanelWidth * across);
            return ((x, t), (x, b), new Shape.Label(x, Top + PanelHeight + 9, number, 7, Anchor.Middle));
        }

        if (place.Place.StartsWith("along", StringComparison.Ordinal))
        {
            double y = Top + (PanelHeight * along);
            return ((l, y), (r, y), new Shape.Label(left + PanelWidth + 3, y + 2.5, number, 7));
        }

        bool isFirst = index % 2 == 0;
        return isFirst
            ? ((l, t), (r, b), new Shape.Label(left - 4, Top + 8, number, 7, Anchor.End))
            : ((l, b), (r, t), new Shape.Label(left - 4, Top + PanelHeight - 3, number, 7, Anchor.End));
    }

    private static double Size(Quantity quantity) => Math.Abs(Exact.Of(quantity).Value.ToDouble());

    private static string Number(Quantity quantity) => quantity.Value.ToString(CultureInfo.InvariantCulture);
}
