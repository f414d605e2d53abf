using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>What a valve holds back; all exact.</summary>
public static class LeakTest
{
    /// <summary>
    /// Leak-down of a cylinder as a part of the supply: (supply - held) / supply. Definition; a supply of 80 psi with 60 psi held
    /// is 25 %.
    /// </summary>
    /// <param name="supply">Gauge pressure before the orifice, above 0.</param>
    /// <param name="held">Gauge pressure behind it, 0 to the supply.</param>
    public static ShopResult<Exact> LeakDown(Exact supply, Exact held) =>
        (
            Allowed.Above0("supply", supply)
            ?? Allowed.NotBelow0("held", held)
            ?? Allowed.NotAbove("held", held, "supply", supply)
        )
            is { } fault
            ? fault
            : (supply - held) / supply;

    /// <summary>
    /// Leak rate from how fast a closed volume loses its pressure or vacuum: volume x |end - start| / time, a pressure times a volume per
    /// time (1 Pa m3/s = 1 W). Isothermal ideal gas, leak small against the volume.
    /// </summary>
    /// <param name="volume">Of port, hose and cup together, above 0.</param>
    /// <param name="start">Reading at the start.</param>
    /// <param name="end">Reading at the end, in the same sense (both pressures or both vacuums).</param>
    /// <param name="time">Between the two, above 0.</param>
    public static ShopResult<Exact> DecayRate(Exact volume, Exact start, Exact end, Exact time) =>
        (Allowed.Above0("volume", volume) ?? Allowed.Above0("time", time)) is { } fault
            ? fault
            : volume * Size(end - start) / time;

    /// <summary>
    /// What a seat holds as a part of what the pump reads against a blocked hose: held / blocked. Definition; it takes altitude and
    /// the pump's condition out of the reading.
    /// </summary>
    /// <param name="held">Vacuum at the port, 0 to the blocked reading.</param>
    /// <param name="blocked">Vacuum with the hose blocked, above 0.</param>
    public static ShopResult<Exact> SealShare(Exact held, Exact blocked) =>
        (
            Allowed.Above0("blocked", blocked)
            ?? Allowed.NotBelow0("held", held)
            ?? Allowed.NotAbove("held", held, "blocked reading", blocked)
        )
            is { } fault
            ? fault
            : held / blocked;

    private static Exact Size(Exact value) => value with { Value = value.Value.Abs() };
}
