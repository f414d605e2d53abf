using ProcRunner.Practice.Chances;
using ProcRunner.Practice.Heads;

namespace ProcRunner.Practice.Works;

/// <summary>The deck, heat, washing, and what is put together at the end.</summary>
internal static class DeckWork
{
    public static IEnumerable<Work> All { get; } =
    [
        new("level head", false, Level),
        new("touch deck", false, null, (b, _) => b.DeckTouched = -b.Head.Deck.Highest),
        new("cut deck", false, null, null, Skim, bench => bench.Head.Deck.BeginSkim()),
        new("let head come to room", false, ComeToRoom),
        new(
            "warm head",
            false,
            (b, _, _) => b.Head[Truths.HeadTemperature, 0] = b.Head[Truths.RoomTemperature, 0] + b.Tools["oven"]
        ),
        new("wash head", false, WashHead),
        new("fit pre-chamber", false, FitChamber),
        new("fit spring", false, (b, p, _) => b.Fit("spring", p, b.ChanceOf("spring", p))),
        new("fit shims", true, FitShims),
        new("fit cam shim", true, (b, p, to) => b.Head[Truths.CamShim, p] = to),
    ];

    private static void Level(Bench bench, int position, double to)
    {
        Chance chance = bench.ChanceOf("level head", position);
        bench.Lean = (bench.Tools["levelling"] * chance.Normal(), bench.Tools["levelling"] * chance.Normal());
    }

    private static void Skim(Bench bench, int position, double deep)
    {
        Chance chance = bench.ChanceOf("cut deck", position);
        double[] left = new double[25];
        for (int i = 0; i < left.Length; i++)
        {
            left[i] = bench.Tools["deck form left"] * chance.Normal();
        }

        double from = -bench.DeckTouched;
        bench.Head.Deck.Skim(from, deep - bench.DeckTouched, bench.Lean.Along, bench.Lean.Across, left);
        bench.Head[Truths.DeckFinish, 0] = bench.Tools["finish left"] + (bench.Tools["finish error"] * chance.Normal());
    }

    private static void ComeToRoom(Bench bench, int position, double to)
    {
        Chance chance = bench.ChanceOf("room", position);
        bench.Head[Truths.HeadTemperature, 0] =
            bench.Head[Truths.RoomTemperature, 0] + (bench.Tools["room error"] * chance.Normal());
    }

    private static void WashHead(Bench bench, int position, double to)
    {
        for (int i = 0; i < bench.Head.Positions; i++)
        {
            SeatWork.Clean(bench.Head, i);
        }
    }

    // The part's stand is given over the deck as it is now.
    private static void FitChamber(Bench bench, int position, double to)
    {
        bench.Fit("pre-chamber", position, bench.ChanceOf("pre-chamber", position));
        for (int i = 0; i < Truths.ChamberStand.Places.Count; i++)
        {
            bench.Head[Truths.ChamberStand, position, i] += bench.Head.DeckHeightAt(position);
        }
    }

    private static void FitShims(Bench bench, int position, double to)
    {
        double step = bench.Tools["shim step"];
        bench.Head[Truths.ShimStack, position] = step > 0 ? Math.Max(0, Math.Round(to / step) * step) : Math.Max(0, to);
    }
}
