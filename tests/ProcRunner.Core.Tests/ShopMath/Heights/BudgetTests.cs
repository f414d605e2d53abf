using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.Quantities;

namespace ProcRunner.Core.Tests.ShopMath.Heights;

/// <summary>
/// Budgets of several limits, used up as they are shown: no limit is passed, and the one that binds is reached to the digits shown.
/// Readings are in inches, limits in millimetres, so that nothing comes out even; at most four rooms and an angle are drawn.
/// </summary>
public sealed class BudgetTests
{
    private const double ShownMillimetres = 0.0001;

    [Property]
    public Property A_sink_used_up_passes_no_limit() =>
        Over(
            (rooms, angle) =>
            {
                (string Reading, string Limit, bool IsHigh)[] all =
                [
                    ("recession", "recession-high", true),
                    ("stem-height", "stem-height-high", true),
                    ("installed-height", "installed-height-high", true),
                    ("lash", "lash-low", false),
                ];
                string lean = In($"guide-angle={angle / 10m} deg");
                string given = string.Join(
                    "; ",
                    all.Select((one, i) => Pair(one.Reading, one.Limit, one.IsHigh, i, rooms[i]))
                );

                string sink = Shown("sink-left", $"{given}; {lean}", "sink left");

                double[] left =
                [
                    Room(
                        After("recession-after", Reading("recession", 0), $"sink={sink}; {lean}"),
                        0,
                        rooms[0],
                        isHigh: true
                    ),
                    Room(
                        After("stem-height-after", Reading("stem-height", 1), $"sink={sink}"),
                        1,
                        rooms[1],
                        isHigh: true
                    ),
                    Room(
                        After("installed-height-after", Reading("installed-height", 2), $"sink={sink}"),
                        2,
                        rooms[2],
                        isHigh: true
                    ),
                    Room(After("lash-after", Reading("lash", 3), $"sink={sink}"), 3, rooms[3], isHigh: false),
                ];
                Holds(left, sink);
            }
        );

    [Property]
    public Property A_reface_used_up_passes_no_limit() =>
        Over(
            (rooms, angle) =>
            {
                string face = In($"face-angle={20 + (angle / 10m)} deg");
                string given =
                    $"{Pair("margin", "margin-low", isHigh: false, 0, rooms[0])}; "
                    + Pair("recession", "recession-high", isHigh: true, 1, rooms[1]);

                string removed = Shown("reface-left", $"{given}; {face}", "reface left");

                Exact margin = After("margin-after", Reading("margin", 0), $"removed={removed}; {face}");
                Exact sunk = WorkBench
                    .Answer("sink-from-face", $"removed={removed}; {face}")
                    .Find("sink")!
                    .Amount!.Value;
                Holds(
                    [
                        Room(margin, 0, rooms[0], isHigh: false),
                        Room(Known.Of(Value(1)) + sunk, 1, rooms[1], isHigh: true),
                    ],
                    removed
                );
            }
        );

    [Property]
    public Property A_deck_cut_used_up_passes_no_limit() =>
        Over(
            (rooms, lost) =>
            {
                string given =
                    $"{Pair("thickness", "minimum", isHigh: false, 0, rooms[0])}; "
                    + $"{Pair("recession", "recession-low", isHigh: false, 1, rooms[1])}; "
                    + $"{Pair("protrusion", "protrusion-high", isHigh: true, 2, rooms[2])}; "
                    + In($"budget={(rooms[3] + lost) / 1000m} mm; block-lost={lost / 1000m} mm");

                string cut = Shown("deck-cut-allowed", given, "cut allowed");

                WorkBench.Gives("deck-cut-allowed", $"{given}; cut={cut}", "verdict=allowed");
                Exact taken = Known.Of(cut);
                double[] left =
                [
                    Room(Known.Of(Value(0)) - taken, 0, rooms[0], isHigh: false),
                    Room(
                        After("recession-after", Reading("recession", 1), $"deck-cut={cut}"),
                        1,
                        rooms[1],
                        isHigh: false
                    ),
                    Room(
                        After("protrusion-after", Reading("protrusion", 2), $"deck-cut={cut}"),
                        2,
                        rooms[2],
                        isHigh: true
                    ),
                    (rooms[3] / 1000.0) - taken.In(Units.Millimetre).ToDouble(),
                ];
                Holds(left, cut);
            }
        );

    [Property]
    public Property A_sink_at_either_end_of_its_window_is_in_limits() =>
        Over(
            (rooms, angle) =>
            {
                string cut = In($"deck-cut={rooms[2] / 25_000m} in");
                string lean = In($"guide-angle={angle / 10m} deg");
                decimal low = Millimetres(0) - (rooms[2] / 1000m * 1.016m) + (rooms[0] / 1000m);
                decimal high = low + (rooms[1] / 1000m);
                string window = $"{Reading("recession", 0)}; {cut}; {lean}" + In($"; low={low} mm; high={high} mm");

                double[] after =
                [
                    .. new[] { "least sink", "most sink" }
                        .Select(end => Shown("sink-window", window, end))
                        .Select(sink =>
                            After("recession-after", Reading("recession", 0), $"sink={sink}; {cut}; {lean}")
                        )
                        .Select(recession => recession.In(Units.Millimetre).ToDouble()),
                ];

                Assert.InRange(after[0], (double)low - 1e-12, (double)low + ShownMillimetres);
                Assert.InRange(after[1], (double)high - ShownMillimetres, (double)high + 1e-12);
            }
        );

    private static void Holds(double[] left, string used)
    {
        Assert.All(left, one => Assert.True(one >= -1e-12, $"{one} past a limit with {used} used up"));
        Assert.True(left.Min() <= ShownMillimetres, $"{left.Min()} left of the limit that binds with {used} used up");
    }

    // What is left to the limit that was given for a reading.
    private static double Room(Exact after, int which, int room, bool isHigh)
    {
        decimal limit = Limit(which, room, isHigh);
        double millimetres = after.In(Units.Millimetre).ToDouble();
        return isHigh ? (double)limit - millimetres : millimetres - (double)limit;
    }

    private static Exact After(string function, string reading, string work) =>
        WorkBench.Answer(function, $"{reading}; {work}").Find(function.Replace('-', ' '))!.Amount!.Value;

    private static string Shown(string function, string given, string name) =>
        WorkBench.Answer(function, given).Find(name)!.Text;

    private static string Pair(string reading, string limit, bool isHigh, int which, int room) =>
        Reading(reading, which) + In($"; {limit}={Limit(which, room, isHigh)} mm");

    private static string Reading(string name, int which) => $"{name}={Value(which)}";

    // 40, 42, 44, 46 mm and a bit, in inches.
    private static string Value(int which) => In($"{(39_370 + (1_969 * which)) / 25_000m} in");

    private static decimal Millimetres(int which) => (39_370 + (1_969 * which)) / 25_000m * 25.4m;

    private static decimal Limit(int which, int room, bool isHigh) =>
        Millimetres(which) + (isHigh ? room / 1000m : -room / 1000m);

    private static Property Over(Action<int[], int> holds) =>
        Prop.ForAll(
            Gen.Choose(1, 1999).ArrayOf(4).Zip(Gen.Choose(1, 450)).ToArbitrary(),
            drawn => holds(drawn.Item1, drawn.Item2)
        );

    private static string In(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
