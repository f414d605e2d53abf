using ProcRunner.Practice.Chances;
using ProcRunner.Practice.Heads;

namespace ProcRunner.Practice.Works;

/// <summary>Guides, counterbores and inserts.</summary>
internal static class GuideWork
{
    public static IEnumerable<Work> All { get; } =
    [
        new("new guide in hand", false, (b, p, _) => b.Fit("guide", p, b.ChanceOf("guide", p))),
        new("chill guide", false, (b, p, _) => b.Head[Truths.GuideColder, p] = b.Tools["chill"]),
        new("press guide", true, PressGuide),
        new("size guide", true, SizeGuide),
        new("new insert in hand", false, (b, p, _) => b.Fit("insert", p, b.ChanceOf("insert", p))),
        new("made insert in hand", true, MadeInsert),
        new("set boring bar", true, (b, p, to) => b.BarSetTo[p] = to),
        // The face round the counterbore lies in the chamber and isn't skimmed with the deck.
        new("touch face", false, null, (_, _) => 0),
        new("cut counterbore", false, null, null, CutCounterbore),
        new("chill insert", false, (b, p, _) => b.Head[Truths.InsertColder, p] = b.Tools["chill"]),
        new("press insert", false, PressInsert),
    ];

    // The guide's bore closes by the interference that is left when all has come to the room's warmth. One that is tight as it
    // goes in stands off its stop by a little; one that slips in lies on it.
    private static void PressGuide(Bench bench, int position, double to)
    {
        Chance chance = bench.ChanceOf("press guide", position);
        PracticeHead head = bench.Head;
        double outside = bench.Mean(Truths.GuideOutside, position);
        double inside = head[Truths.GuideInside, position];
        double interference = outside - bench.Mean(Truths.GuideHole, position);
        double closing = Geometry.BoreClosing(interference, inside, outside);
        for (int i = 0; i < Truths.GuideBore.Places.Count; i++)
        {
            head[Truths.GuideBore, position, i] = inside - closing;
        }

        double off = bench.Tools["press stop"] * chance.Normal();
        head[Truths.StandOut, position] = to + (WorkedTruths.GuideFitNow(head, position) > 0 ? off : 0);
        head[Truths.GuideColder, position] = 0;
        bench.PinchNeighbours(position, interference, outside, inside);
    }

    // A tool that takes metal off leaves a bore that is larger already as it is; the seat no longer runs true to the new axis.
    private static void SizeGuide(Bench bench, int position, double to)
    {
        Chance chance = bench.ChanceOf("size guide", position);
        PracticeHead head = bench.Head;
        double bore = to + (bench.Tools["guide sizing"] * chance.Normal());
        for (int i = 0; i < Truths.GuideBore.Places.Count; i++)
        {
            double here = bore + (bench.Tools["guide sizing each"] * chance.Normal());
            head[Truths.GuideBore, position, i] = Math.Max(head[Truths.GuideBore, position, i], here);
        }

        head[Truths.OffAlong, position] += bench.Tools["guide axis shift"] * chance.Normal();
        head[Truths.OffAcross, position] += bench.Tools["guide axis shift"] * chance.Normal();
    }

    private static void CutCounterbore(Bench bench, int position, double deep)
    {
        Chance chance = bench.ChanceOf("cut counterbore", position);
        PracticeHead head = bench.Head;
        double bar = bench.BarSetTo[position];
        if (bar > 0)
        {
            double bore = bar + (bench.Tools["boring"] * chance.Normal());
            for (int i = 0; i < Truths.CounterboreBore.Places.Count; i++)
            {
                double here = bore + (bench.Tools["boring each"] * chance.Normal());
                head[Truths.CounterboreBore, position, i] = Math.Max(head[Truths.CounterboreBore, position, i], here);
            }

            bench.BarSetTo[position] = 0;
        }

        for (int i = 0; i < Truths.CounterboreDepth.Places.Count; i++)
        {
            head[Truths.CounterboreDepth, position, i] = deep;
        }
    }

    // An insert turned to a bore that is there already.
    private static void MadeInsert(Bench bench, int position, double to)
    {
        Chance chance = bench.ChanceOf("made insert", position);
        bench.Fit("insert", position, chance);
        for (int i = 0; i < Truths.InsertOutside.Places.Count; i++)
        {
            bench.Head[Truths.InsertOutside, position, i] = to + (bench.Tools["made insert"] * chance.Normal());
        }
    }

    // Only one that is tight as it goes in can stop before the bottom; heat in the head and cold in the insert let it fall in.
    private static void PressInsert(Bench bench, int position, double to)
    {
        Chance chance = bench.ChanceOf("press insert", position);
        PracticeHead head = bench.Head;
        bool stops = chance.Happens(bench.Tools["insert not bottomed"]);
        bool proud = stops && WorkedTruths.InsertFitNow(head, position) > 0;
        head[Truths.InsertColder, position] = 0;
        for (int i = 0; i < Truths.InsertGap.Places.Count; i++)
        {
            head[Truths.InsertGap, position, i] = proud ? bench.Tools["not bottomed by"] : 0;
        }

        head.SetCondition("seat", position, "sound");
        double proudBy = proud ? bench.Tools["not bottomed by"] : 0;
        // The insert's top lies under the face by its set-back, and the fresh seat under its top.
        head[Truths.SeatDepth, position] =
            WorkedTruths.SetBack(head, position) + head[Truths.FreshDepth, position] - proudBy;
        head[Truths.SeatOutside, position] = head[Truths.FreshOutside, position];
        head[Truths.SeatInside, position] = head[Truths.FreshInside, position];
        head[Truths.OffAlong, position] = bench.Tools["insert centring"] * chance.Normal();
        head[Truths.OffAcross, position] = bench.Tools["insert centring"] * chance.Normal();
        double outside = bench.Mean(Truths.InsertOutside, position);
        double interference = outside - bench.Mean(Truths.CounterboreBore, position);
        bench.PinchNeighbours(position, interference, outside, head[Truths.InsertInside, position]);
    }
}
