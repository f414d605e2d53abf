using ProcRunner.Quantities;
using static ProcRunner.Practice.Heads.Geometry;

namespace ProcRunner.Practice.Heads;

/// <summary>What follows at a position from the given dimensions, by the practice head's own geometry.</summary>
internal static class WorkedTruths
{
    private static readonly Dimension Pressure = Units.Find("inHg")!.Dimension;

    public static IReadOnlyList<HeadDimension> All { get; } =
    [
        new(
            "recession",
            ofHead: false,
            Dimension.OfLength,
            Truths.Round,
            Recession,
            // Dirt holds the valve off its seat.
            (h, p, i, _) => Recession(h, p, i) - SquareToDeck(h[Truths.DirtHeight, p], h.GuideAngle(p))
        ),
        new(
            "stem height",
            ofHead: false,
            Dimension.OfLength,
            [""],
            (h, p, _) => StemHeight(h, p),
            (h, p, _, _) => StemHeight(h, p) - h[Truths.DirtHeight, p]
        ),
        Of("bare height", Bare),
        Of("installed height", (h, p) => Bare(h, p) - h[Truths.ShimStack, p]),
        Of("retainer gap", (h, p) => Bare(h, p) - h[Truths.SealTop, p]),
        Of("retainer-to-seal", (h, p) => Bare(h, p) - h[Truths.SealTop, p] - h[Truths.Lift, p]),
        Of("seat width", (h, p) => Width(h[Truths.SeatOutside, p], h[Truths.SeatInside, p], h[Truths.SeatAngle, p])),
        new(
            "seat runout",
            ofHead: false,
            Dimension.OfLength,
            ["pilot as it stands", "pilot turned"],
            (h, p, _) => RunoutOf(h[Truths.OffAlong, p], h[Truths.OffAcross, p]),
            // The indicator turns about the pilot: what the pilot is bent by stands first on one side, then on the other.
            (h, p, i, own) =>
                RunoutOf(
                    h[Truths.OffAlong, p] - ((i == 0 ? 1 : -1) * (h[Truths.PilotBend, p] + own)),
                    h[Truths.OffAcross, p]
                )
        ),
        Of("seat vacuum", Pressure, Vacuum),
        Of("final vacuum", Pressure, Vacuum),
        Of("face to seat angle", Dimension.OfAngle, (h, p) => h[Truths.SeatAngle, p] - h[Truths.FaceAngle, p]),
        Of("least clearance", (h, p) => Least(h, Truths.GuideBore, p) - Most(h, Truths.Stem, p)),
        Of("most clearance", (h, p) => Most(h, Truths.GuideBore, p) - Least(h, Truths.Stem, p)),
        Of("taper along", (h, p) => Apart(h, p, 0, 2, 4)),
        Of("taper across", (h, p) => Apart(h, p, 1, 3, 5)),
        Of("guide out of round", (h, p) => Enumerable.Range(0, 3).Max(i => Apart(h, p, 2 * i, (2 * i) + 1))),
        Of("least guide fit", (h, p) => Least(h, Truths.GuideOutside, p) - Most(h, Truths.GuideHole, p)),
        Of("most guide fit", (h, p) => Most(h, Truths.GuideOutside, p) - Least(h, Truths.GuideHole, p)),
        Of("least insert fit", (h, p) => Least(h, Truths.InsertOutside, p) - Most(h, Truths.CounterboreBore, p)),
        Of("most insert fit", (h, p) => Most(h, Truths.InsertOutside, p) - Least(h, Truths.CounterboreBore, p)),
        Of("guide fit as it goes in", GuideFitNow),
        Of("insert fit as it goes in", InsertFitNow),
        Of("insert set-back", SetBack),
        Of(
            "counterbore out of round",
            (h, p) =>
                Math.Max(
                    Math.Abs(h[Truths.CounterboreBore, p, 0] - h[Truths.CounterboreBore, p, 1]),
                    Math.Abs(h[Truths.CounterboreBore, p, 2] - h[Truths.CounterboreBore, p, 3])
                )
        ),
        new("deck wedge", ofHead: true, Dimension.OfLength, [""], (h, _, _) => Wedge(h.Deck)),
        Of("seat load", Dimension.OfForce, (h, p) => LoadAt(h, p, Bare(h, p) - h[Truths.ShimStack, p])),
        Of(
            "open load",
            Dimension.OfForce,
            (h, p) => LoadAt(h, p, Bare(h, p) - h[Truths.ShimStack, p] - h[Truths.Lift, p])
        ),
        Of(
            "coil-bind margin",
            (h, p) => Bare(h, p) - h[Truths.ShimStack, p] - h[Truths.Lift, p] - h[Truths.SolidHeight, p]
        ),
        Of("pre-chamber protrusion", ["front", "rear"], (h, p, i) => h[Truths.ChamberStand, p, i] - h.DeckHeightAt(p)),
        Of("injector protrusion", (h, p) => h[Truths.InjectorStand, p] - h.DeckHeightAt(p)),
        Of("lash", (h, p) => h[Truths.CamOverPocket, p] - h[Truths.CamShim, p] - StemHeight(h, p)),
    ];

    /// <summary>How far the valve's combustion side lies from the plane that stays with the casting, along the guide's axis.</summary>
    private static double Depth(PracticeHead head, int position) =>
        head[Truths.SeatDepth, position] + head[Truths.ValveDrop, position];

    private static double Recession(PracticeHead head, int position, int place) =>
        SquareToDeck(Depth(head, position), head.GuideAngle(position))
        + head.DeckHeightAt(position)
        + head[Truths.AroundValve, position, place];

    /// <summary>How far a bottomed insert's top lies under the face round its counterbore.</summary>
    public static double SetBack(PracticeHead head, int position) =>
        Most(head, Truths.CounterboreDepth, position) - Most(head, Truths.InsertHeight, position);

    // Left against right, each by its two corners.
    private static double Wedge(DeckForm deck) =>
        Math.Abs(deck.Thickness(0) + deck.Thickness(2) - deck.Thickness(1) - deck.Thickness(3)) / 2;

    private static double StemHeight(PracticeHead head, int position) =>
        head[Truths.ValveLength, position] + Depth(head, position) - head[Truths.SpringPocket, position];

    // The retainer sits a fixed way down from the groove's own place, so grinding the tip leaves it where it is.
    private static double Bare(PracticeHead head, int position) =>
        StemHeight(head, position) - head[Truths.TipToRetainer, position];

    /// <summary>The guide's interference with guide and head as warm as they are, negative where it slips in.</summary>
    public static double GuideFitNow(PracticeHead head, int position) =>
        FitNow(head, position, Truths.GuideOutside, Truths.GuideHole, Truths.GuideExpansion, Truths.GuideColder);

    /// <summary>The insert's interference with insert and head as warm as they are, negative where it slips in.</summary>
    public static double InsertFitNow(PracticeHead head, int position) =>
        FitNow(
            head,
            position,
            Truths.InsertOutside,
            Truths.CounterboreBore,
            Truths.InsertExpansion,
            Truths.InsertColder
        );

    private static double FitNow(
        PracticeHead head,
        int position,
        HeadDimension part,
        HeadDimension hole,
        HeadDimension expansion,
        HeadDimension colder
    ) =>
        FitAt(
            Mean(head, part, position),
            Mean(head, hole, position),
            head[expansion, position],
            head[Truths.HeadExpansion, 0],
            -head[colder, position],
            Warmer(head)
        );

    // Parts and bores are true at the room's temperature, where they are measured.
    private static double Warmer(PracticeHead head) =>
        head[Truths.HeadTemperature, 0] - head[Truths.RoomTemperature, 0];

    private static double Mean(PracticeHead head, HeadDimension of, int position) =>
        Enumerable.Range(0, of.Places.Count).Average(i => head[of, position, i]);

    // A spring is straight between the two loads it is known by.
    private static double LoadAt(PracticeHead head, int position, double height)
    {
        double closed = head[Truths.LoadClosed, position];
        double rate =
            (head[Truths.LoadOpen, position] - closed)
            / (head[Truths.TestClosed, position] - head[Truths.TestOpen, position]);
        return closed + (rate * (head[Truths.TestClosed, position] - height));
    }

    // What the pump reaches less what leaks: the seat's own leak, dirt, a seat off its axis, a loose guide, a burnt seat. How
    // much each loses is invented.
    private static double Vacuum(PracticeHead head, int position)
    {
        double inHg = Units.Find("inHg")!.Factor.ToDouble();
        double off = RunoutOf(head[Truths.OffAlong, position], head[Truths.OffAcross, position]);
        double loose = Math.Max(0, Most(head, Truths.GuideBore, position) - Least(head, Truths.Stem, position) - 0.1);
        double lost = (off * 20) + (loose * 30) + (head.Condition("seat", position) == "sound" ? 0 : 10);
        return Math.Max(
            0,
            head[Truths.Pump, position] - head[Truths.Leak, position] - head[Truths.Dirt, position] - (lost * inHg)
        );
    }

    private static double Apart(PracticeHead head, int position, params ReadOnlySpan<int> places)
    {
        (double least, double most) = (double.MaxValue, double.MinValue);
        foreach (int place in places)
        {
            double value = head[Truths.GuideBore, position, place];
            (least, most) = (Math.Min(least, value), Math.Max(most, value));
        }

        return most - least;
    }

    private static double Least(PracticeHead head, HeadDimension of, int position) =>
        Enumerable.Range(0, of.Places.Count).Min(i => head[of, position, i]);

    private static double Most(PracticeHead head, HeadDimension of, int position) =>
        Enumerable.Range(0, of.Places.Count).Max(i => head[of, position, i]);

    private static HeadDimension Of(string name, Func<PracticeHead, int, double> worked) =>
        new(name, ofHead: false, Dimension.OfLength, [""], (h, p, _) => worked(h, p));

    private static HeadDimension Of(string name, Dimension kind, Func<PracticeHead, int, double> worked) =>
        new(name, ofHead: false, kind, [""], (h, p, _) => worked(h, p));

    private static HeadDimension Of(string name, string[] places, Func<PracticeHead, int, int, double> worked) =>
        new(name, ofHead: false, Dimension.OfLength, places, worked);
}
