using ProcRunner.Shop;

namespace ProcRunner.Runs.Tests;

/// <summary>Invented work in which one reading is taken twice, and what came of it.</summary>
internal static class DoubtWork
{
    public const string Depth = "depth: {of: position, measured-in: length, gauge: depth, why: it matters}";
    public const string Limit = "depth: {low: 0.046, aim: 0.052, high: 0.058, origin: maker}";

    public static Rig Twice(string reading = Depth, string limit = Limit, string? turn = "0.025 in")
    {
        // Found, then measured once more with nothing done between.
        Rig rig = new(
            Work.Procedure(
                reading,
                "- measure: depth\n  named: found\n  window: none\n- measure: depth\n  named: once more\n  window: none"
            ),
            Work.Head(limit),
            Turning(turn)
        );
        return rig;
    }

    public static ShopState Turning(string? turn) =>
        RigShop.State.With(RigShop.Gauge("depth", "0.00005 in") with { Turn = turn is null ? null : RigShop.Q(turn) });

    public static Rig AsFound(string reading, string limit, ShopState shop) =>
        new(
            Work.Procedure(reading, "- measure: depth\n  named: once more\n  window: none")
                .Replace(
                    "stages:\n",
                    "stages:\n- stage: teardown\n  walk: by step\n  as-found: yes\n  steps:\n  - measure: depth\n    named: found\n    window: none\n  - sign: measured\n    named: teardown signed\n",
                    StringComparison.Ordinal
                ),
            Work.Head(limit),
            shop
        );

    public static void Found(Rig rig, params string[] values)
    {
        string[] names = ["1I", "1E", "2I", "2E"];
        for (int i = 0; i < names.Length; i++)
        {
            rig.Enter($"found {names[i]}", values[i]);
        }

        rig.Sign("teardown signed");
    }

    // Four cylinders: found, decided about, touched off and cut.
    public static Rig Seats() =>
        new(
            Work.Procedure(
                Depth,
                """
                - measure: depth
                  named: found
                  window: none
                - decide: new insert
                  choices: [yes, no]
                - zero: seat
                  from: depth
                - cut: depth
                  named: cut
                  stop-short: "'0.005 in'"
                """
            ),
            Work.Head(Limit).Replace("cylinders: 2", "cylinders: 4", StringComparison.Ordinal),
            RigShop.State
        );

    public static string Wearing(string way) =>
        $"depth: {{of: position, measured-in: length, gauge: depth, wears: {way}, why: it matters}}";

    public static bool IsAsked(IReadOnlyList<RunEvent> events) =>
        events is [RunEvent.EntryQuestioned { IsOfReading: true }];

    public static RunEvent.EntryQuestioned Asked(IReadOnlyList<RunEvent> events) =>
        Assert.IsType<RunEvent.EntryQuestioned>(Assert.Single(events));

    public static void Same(Rig rig) => Assert.Equal(StateDump.Of(rig.State), StateDump.Of(rig.Replay()));
}
